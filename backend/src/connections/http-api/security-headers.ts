import helmet from 'helmet';
import type { Edge } from '../../ports/edge';
import type { Next, WebRequest, WebResponse } from './web-types';

/** A year, as ASVS 5.0 V3.4.1 asks for at least. */
const HSTS_SECONDS = 31_536_000;

/**
 * None of these is used: the browser need not offer them to whatever might be slipped in (W3C Permissions Policy). A hall on a wall
 * keeps its screen awake, from this program's own pages alone.
 */
const permissions = [
  ...['accelerometer', 'autoplay', 'browsing-topics', 'camera', 'display-capture', 'encrypted-media'],
  ...['geolocation', 'gyroscope', 'hid', 'idle-detection', 'local-fonts', 'magnetometer', 'microphone', 'midi'],
  ...['payment', 'picture-in-picture', 'publickey-credentials-get', 'serial', 'usb'],
  ...['xr-spatial-tracking'],
]
  .map((name) => `${name}=()`)
  .concat('screen-wake-lock=(self)')
  .join(', ');

/**
 * The browser takes scripts, styles, fonts and data from this program alone, shows it in no frame, and tells
 * nobody where it was. What pictures place by style attributes is set by script (CSSOM), which needs no leave.
 * Over TLS browsers are told to stay with it; on loopback there is none, so there they are not.
 */
export function securityHeaders(edge: Pick<Edge, 'isSecure'>) {
  const always = helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        scriptSrcAttr: ["'none'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        manifestSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    crossOriginOpenerPolicy: { policy: 'same-origin' },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
    xFrameOptions: { action: 'deny' },
    strictTransportSecurity: false,
  });
  return (request: WebRequest, response: WebResponse, next: Next): void => {
    response.set('Permissions-Policy', permissions);
    if (edge.isSecure(request)) response.set('Strict-Transport-Security', `max-age=${HSTS_SECONDS}; includeSubDomains`);
    always(request as never, response as never, next);
  };
}
