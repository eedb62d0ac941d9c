/** The bar at the top: which view, which block it is about, the steps of a view that has some, and what to do with the picture. */
import type { Preview } from '../../../server/src/lsp/requests.ts';
import { button } from './tools.ts';

export interface BarWishes {
  readonly look: (view: string) => void;
  readonly step: (number: number) => void;
  readonly words: (open: boolean) => void;
  readonly save: () => void;
  readonly print: () => void;
  readonly ownWindow: () => void;
}

export interface Bar {
  readonly show: (preview: Preview | null) => void;
  /** Whether there are words beside the picture, and whether they are to be seen. */
  readonly showWords: (words: 'none' | 'open' | 'closed') => void;
}

export function barIn(bar: HTMLElement, wishes: BarWishes): Bar {
  const views = document.createElement('select');
  views.setAttribute('aria-label', 'View');
  views.addEventListener('change', () => wishes.look(views.value));
  const about = document.createElement('output');
  about.setAttribute('aria-label', 'Block');
  let step = 1;
  let count = 1;
  const back = button('back', 'Previous step (Page Up)', () => wishes.step(step - 1));
  const on = button('on', 'Next step (Page Down)', () => wishes.step(step + 1));
  const said = document.createElement('output');
  const steps = document.createElement('span');
  steps.className = 'steps';
  steps.setAttribute('role', 'group');
  steps.setAttribute('aria-label', 'Steps');
  steps.append(back, said, on);
  const words = button('words', 'Show or hide the words', () => wishes.words(words.getAttribute('aria-expanded') !== 'true'));
  words.setAttribute('aria-controls', 'words');
  const space = document.createElement('span');
  space.className = 'space';
  bar.replaceChildren(views, about, steps, space, words, button('save', 'Save this picture', wishes.save), button('print', 'Print this picture', wishes.print), button('window', 'Move into a window of its own', wishes.ownWindow));
  return {
    show: (preview) => {
      if (preview) offer(views, preview);
      views.disabled = !preview;
      about.textContent = preview?.block ?? '';
      steps.hidden = !preview?.step;
      if (!preview?.step) return;
      ({ number: step, count } = preview.step);
      said.textContent = `Step ${step} of ${count}`;
      back.disabled = step <= 1;
      on.disabled = step >= count;
    },
    showWords: (state) => {
      words.hidden = state === 'none';
      words.setAttribute('aria-expanded', `${state === 'open'}`);
    },
  };
}

/** The list is made once: a new one would close the one that is open. */
function offer(select: HTMLSelectElement, { views, view }: Preview): void {
  if (select.options.length !== views.length) select.replaceChildren(...views.map(({ name, title }) => new Option(title, name)));
  select.value = view;
}
