import { createHash } from 'node:crypto';

/** The namespace of names that are addresses (RFC 9562, appendix on namespaces). */
const URL_NAMESPACE = '6ba7b811-9dad-11d1-80b4-00c04fd430c8';

/** A UUID made from a name (RFC 9562, version 5): the same name always gives the same one. */
export function nameUuid(name: string, namespace: string = URL_NAMESPACE): string {
  const hash = createHash('sha1')
    .update(Buffer.from(namespace.replaceAll('-', ''), 'hex'))
    .update(name)
    .digest()
    .subarray(0, 16);
  hash.writeUInt8(((hash[6] ?? 0) & 0x0f) | 0x50, 6);
  hash.writeUInt8(((hash[8] ?? 0) & 0x3f) | 0x80, 8);
  return hash.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})/u, '$1-$2-$3-$4-');
}
