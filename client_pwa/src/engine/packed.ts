/** Bytes as text and back: gzipped, in base64, for what travels within a page. */

export async function gzipped(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const packed = await throughStream(bytes, new CompressionStream("gzip"));
  let text = "";
  const step = 0x8000;
  for (let at = 0; at < packed.length; at += step) text += String.fromCharCode(...packed.subarray(at, at + step));
  return btoa(text);
}

export async function ungzipped(text: string): Promise<Uint8Array<ArrayBuffer>> {
  const plain = atob(text);
  const bytes = new Uint8Array(plain.length);
  for (let at = 0; at < plain.length; at += 1) bytes[at] = plain.charCodeAt(at);
  return throughStream(bytes, new DecompressionStream("gzip"));
}

async function throughStream(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
}
