import type { BrokerAddress } from './broker-address';
import { isSecured } from './broker-address';

/** What a person does about a fault, by its code in OpenSSL and Node. No secret and no content of a file is told. */
const advice: readonly (readonly [code: RegExp, text: (address: BrokerAddress) => string])[] = [
  [
    /^CERT_HAS_EXPIRED$/,
    () => 'the certificate of the broker has expired; renew it there, or set the clock of this machine right',
  ],
  [
    /^CERT_NOT_YET_VALID$/,
    () => 'the certificate of the broker is not valid yet; set the clock of this machine right, or issue it anew',
  ],
  [/^CERT_REVOKED$/, () => 'the certificate of the broker was revoked; issue another one there'],
  [
    /^(SELF_SIGNED_CERT_IN_CHAIN|DEPTH_ZERO_SELF_SIGNED_CERT|UNABLE_TO_(GET_ISSUER_CERT(_LOCALLY)?|VERIFY_LEAF_SIGNATURE)|CERT_UNTRUSTED|INVALID_CA)$/,
    () =>
      'the certificate of the broker comes from an authority that is not trusted here; name the file of that authority in EBBLINE_MQTT_CA_FILE',
  ],
  [
    /^ERR_TLS_CERT_ALTNAME_INVALID$/,
    ({ host }) =>
      `the certificate of the broker is for another name than ${host}; use in EBBLINE_MQTT_URL a name that it holds, or issue it for this one`,
  ],
  [
    /ALERT_CERTIFICATE_REQUIRED|ALERT_HANDSHAKE_FAILURE|ALERT_BAD_CERTIFICATE|ALERT_UNKNOWN_CA|ALERT_CERTIFICATE_UNKNOWN/,
    () =>
      'the broker wants a certificate of this program that it trusts; name it in EBBLINE_MQTT_CERTIFICATE_FILE and its key in EBBLINE_MQTT_KEY_FILE',
  ],
  [
    /WRONG_VERSION_NUMBER|PACKET_LENGTH_TOO_LONG|ALERT_PROTOCOL_VERSION/,
    () => 'the broker speaks no TLS at this port, or only an old version of it; name its TLS port in EBBLINE_MQTT_URL',
  ],
  [/^ENOTFOUND$|^EAI_AGAIN$/, ({ host }) => `no machine of the name ${host} is known; correct it in EBBLINE_MQTT_URL`],
  [/^ECONNREFUSED$/, () => 'nothing listens at this address (ECONNREFUSED)'],
  [
    /^WEBSOCKET_REFUSED$/,
    ({ path }) =>
      `no websocket for MQTT is served at ${path.replace(/\?.*$/, '')}; correct the path in EBBLINE_MQTT_URL`,
  ],
];

/** Why the broker can't be used and what to do, in one line. */
export function connectionFault(error: Error & { code?: unknown }, address: BrokerAddress): string {
  const code =
    typeof error.code === 'string'
      ? error.code
      : /^Unexpected server response/.test(error.message)
        ? 'WEBSOCKET_REFUSED'
        : '';
  const known = advice.find(([pattern]) => pattern.test(code));
  if (known !== undefined) return known[1](address);
  if (code === '') return error.message;
  return code === 'ECONNRESET' && isSecured(address.transport)
    ? 'the broker hung up while the secured connection was made (ECONNRESET); see what its own log says'
    : code;
}
