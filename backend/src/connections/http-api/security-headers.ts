import helmet from 'helmet';

/**
 * The browser takes scripts, styles, fonts and data from this program alone. Styles may stand in
 * attributes: the pictures place their parts that way. No upgrade to https: there is none on loopback.
 */
export const securityHeaders = (): ReturnType<typeof helmet> =>
  helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        styleSrcAttr: ["'unsafe-inline'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: false,
  });
