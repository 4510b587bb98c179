/** Runs the engine in a worker, or on the page itself where no worker can be had. Of several turns only the newest is run. */
import { unpackBytes } from '../pack.ts';
import type {
  LiveReply,
  LiveRequest,
  OpenRequest,
  RefusedReply,
  TakeReply,
  TakeRequest,
  TurnReply,
  TurnRequest,
  WeekReply,
  WeekRequest,
} from '../types.ts';

/** What the engine's script leaves on the page when it runs there. */
declare global {
  var noonloopEngine: undefined | ((request: LiveRequest) => Promise<LiveReply>);
}

type Ask = (request: LiveRequest) => Promise<LiveReply>;

/** Name by which a link asks for no worker: for tests, and for those whose browser has none. */
const PLAIN = 'plain';

function inWorker(source: string): Ask {
  const url = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
  const worker = new Worker(url);
  const waiting: { readonly done: (reply: LiveReply) => void; readonly failed: (error: Error) => void }[] = [];
  worker.onmessage = ({ data }: MessageEvent<LiveReply | { readonly kind: 'failed'; readonly words: string }>) => {
    const asked = waiting.shift();
    if (data.kind === 'failed') asked?.failed(new Error(data.words));
    else asked?.done(data);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    for (const { failed } of waiting.splice(0)) failed(new Error(event.message || 'the worker does not start'));
  };
  return (request) =>
    new Promise((done, failed) => {
      waiting.push({ done, failed });
      worker.postMessage(request);
    });
}

function onPage(source: string): Ask {
  const script = document.createElement('script');
  script.textContent = source;
  document.head.append(script);
  // A pause before each run, so that the page is drawn and keys are heard.
  return (request) =>
    new Promise<void>((pause) => {
      setTimeout(pause, 20);
    }).then(() => globalThis.noonloopEngine!(request));
}

/** The engine of the page. */
export class Runner {
  /** Whether it runs on the page itself, where a long run holds the page up. */
  slow = false;
  #ask: Ask = () => Promise.reject(new Error('not open'));
  #busy = false;
  #next: (() => void) | null = null;
  #id = 0;

  /** Starts the engine. */
  async open(request: OpenRequest): Promise<void> {
    const source = new TextDecoder().decode(await unpackBytes(document.querySelector('#engine')!.textContent!));
    const open = async (ask: Ask) => {
      await ask(request);
      this.#ask = ask;
    };
    const plain = new URLSearchParams(location.search).has(PLAIN);
    try {
      if (plain) throw new Error('no worker asked for');
      await open(inWorker(source));
    } catch {
      this.slow = true;
      await open(onPage(source));
    }
  }

  /** Runs a turn; `null` where a newer one took its place. */
  async turn(request: Omit<TurnRequest, 'id' | 'kind'>): Promise<TurnReply | RefusedReply | null> {
    const id = ++this.#id;
    if (this.#busy)
      await new Promise<void>((go) => {
        this.#next?.();
        this.#next = go;
      });
    if (id !== this.#id) return null;
    this.#busy = true;
    try {
      const reply = (await this.#ask({ ...request, kind: 'turn', id })) as TurnReply | RefusedReply;
      return id === this.#id ? reply : null;
    } finally {
      this.#busy = false;
      const next = this.#next;
      this.#next = null;
      next?.();
    }
  }

  /** A week of a design. */
  async week(now: WeekRequest['now'], day: number): Promise<WeekReply | RefusedReply> {
    return (await this.#ask({ kind: 'week', id: 0, now, day })) as WeekReply | RefusedReply;
  }

  /** A text to take away. */
  async take(request: Omit<TakeRequest, 'id' | 'kind'>): Promise<TakeReply | RefusedReply> {
    return (await this.#ask({ ...request, kind: 'take', id: 0 })) as TakeReply | RefusedReply;
  }
}
