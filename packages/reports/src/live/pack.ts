/** Bytes deflated and as base64, to stand in a page. */

/** Of browsers and of Node alike; the types of neither alone name them. */
type Body = ConstructorParameters<typeof Response>[0];
type Way = new (format: 'deflate-raw') => Parameters<ReturnType<Blob['stream']>['pipeThrough']>[0];
const { CompressionStream, DecompressionStream } = globalThis as unknown as Record<
  'CompressionStream' | 'DecompressionStream',
  Way
>;

const through = async (bytes: Uint8Array<ArrayBuffer>, Way: Way): Promise<Uint8Array> => {
  const stream = new Blob([bytes]).stream().pipeThrough(new Way('deflate-raw'));
  return new Uint8Array(await new Response(stream as Body).arrayBuffer());
};

/** Bytes as text. */
export async function packBytes(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const small = await through(bytes, CompressionStream);
  let text = '';
  for (let from = 0; from < small.length; from += 8190)
    text += btoa(String.fromCharCode(...small.subarray(from, from + 8190)));
  return text;
}

/** The bytes that {@link packBytes} was given. */
export const unpackBytes = (text: string): Promise<Uint8Array> =>
  through(
    Uint8Array.from(atob(text.trim()), (letter) => letter.charCodeAt(0)),
    DecompressionStream,
  );
