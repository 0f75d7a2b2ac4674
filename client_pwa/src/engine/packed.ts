/** Bytes as text and back: gzipped, in base64, for what travels within a page. */

export async function gzipped(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return inBase64(await throughStream(bytes, new CompressionStream("gzip")));
}

export function inBase64(bytes: Uint8Array): string {
  let text = "";
  const step = 0x8000;
  for (let at = 0; at < bytes.length; at += step) text += String.fromCharCode(...bytes.subarray(at, at + step));
  return btoa(text);
}

export async function ungzipped(text: string): Promise<Uint8Array<ArrayBuffer>> {
  const plain = atob(text);
  const bytes = new Uint8Array(plain.length);
  for (let at = 0; at < plain.length; at += 1) bytes[at] = plain.charCodeAt(at);
  return throughStream(bytes, new DecompressionStream("gzip"));
}

async function throughStream(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream): Promise<Uint8Array<ArrayBuffer>> {
  // Not by way of a blob: WebKit lets a page from the disk make one and does not let it read it.
  const writer = stream.writable.getWriter();
  const written = writer.write(bytes).then(() => writer.close());
  const [read] = await Promise.all([new Response(stream.readable).arrayBuffer(), written]);
  return new Uint8Array(read);
}
