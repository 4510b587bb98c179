/** The engine as a script of its own: in a worker it answers messages, on the page it leaves a function. */
import { type LiveEngine, openEngine } from '../engine.ts';
import type { LiveReply, LiveRequest } from '../types.ts';

let engine: LiveEngine | null = null;

async function answer(request: LiveRequest): Promise<LiveReply> {
  if (request.kind !== 'open') return engine!.handle(request);
  engine = await openEngine(request);
  return { kind: 'open' };
}

if (typeof document === 'undefined') {
  let last: Promise<void> = Promise.resolve();
  self.onmessage = ({ data }: MessageEvent<LiveRequest>) => {
    // In order: nothing is answered before the weather is unpacked.
    last = last.then(async () => {
      try {
        self.postMessage(await answer(data));
      } catch (error) {
        self.postMessage({
          kind: 'failed',
          words: error instanceof Error ? `${error.name}: ${error.message}` : String(error),
        });
      }
    });
  };
} else globalThis.noonloopEngine = answer;
