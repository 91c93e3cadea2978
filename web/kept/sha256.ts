/** SHA-256 of some bytes, as hexadecimal digits. */
export async function sha256Of(content: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await content.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
