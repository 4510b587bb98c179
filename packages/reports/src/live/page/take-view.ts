/** What is taken away: files, the link, paper. */
import type { TakeReply } from '../types.ts';
import { find, make } from './dom.ts';

/** Hands a text to the browser as a file. */
function save({ name, type, text }: Pick<TakeReply, 'name' | 'type' | 'text'>): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = make('a', { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Puts the link into the clipboard, or into a field to copy it from. */
async function copyLink(): Promise<string> {
  const field = find<HTMLInputElement>('#link');
  field.value = location.href;
  field.hidden = false;
  field.select();
  try {
    await navigator.clipboard.writeText(location.href);
    return 'The link is in the clipboard.';
  } catch {
    return 'Copy the link from the field.';
  }
}

/** Listens to the buttons. @param ask - makes a text @param say - tells what happened */
export function takeButtons(ask: (what: string) => Promise<TakeReply | null>, say: (words: string) => void): void {
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-take]'))
    button.addEventListener('click', async () => {
      const what = button.dataset.take!;
      if (what === 'link') return say(await copyLink());
      if (what === 'print') return window.print();
      const reply = await ask(what);
      if (reply === null) return say('Nothing was saved: a field is not taken.');
      save(reply);
      say(`Saved: ${reply.name}.`);
    });
}
