import type {
  ConflictChoice,
  ConflictTotal,
  ConflictView,
  ResolveView,
} from '../../extension/protocol/resolve-view.ts';
import type { JobView } from '../../extension/protocol/views.ts';
import { element, setHidden } from '../dom.ts';
import { button } from '../form.ts';
import type { Ask } from '../suggest/suggester.ts';

const sideLabels: Readonly<Record<ConflictChoice, string>> = {
  ours: 'Ours',
  theirs: 'Theirs',
  both: 'Both',
};

const takeLabels: Readonly<Record<ConflictChoice, string>> = {
  ours: 'Take ours',
  theirs: 'Take theirs',
  both: 'Keep both',
};

function version(label: string, text: string | undefined, known = true): HTMLElement {
  const shown = known ? (text ?? 'nothing here') : 'not known';
  return element(
    'div',
    { class: 'conflict-version' },
    element('dt', { text: label }),
    element('dd', {
      class: text === undefined || !known ? 'conflict-none' : 'conflict-text',
      text: shown.trimEnd(),
    }),
  );
}

function takeButton(key: string, choice: ConflictChoice, title: string): HTMLElement {
  return button({
    action: 'settle',
    argument: JSON.stringify({ [key]: choice }),
    text: takeLabels[choice],
    title: `${takeLabels[choice]}: ${title}`,
  });
}

function totalWords({ choice, price, materials }: ConflictTotal): string {
  return `${sideLabels[choice]}: price ${price}, materials in it ${materials}`;
}

/** One conflict: what happened, the three texts, what each choice comes to, and the choices. */
function conflictElement(conflict: ConflictView): HTMLElement {
  const { key, title, what, base, baseKnown, ours, theirs, choices } = conflict;
  return element(
    'section',
    { class: 'conflict', data: { conflict: key }, attributes: { 'aria-label': title } },
    element('h3', { text: title }),
    element('p', { text: what }),
    element(
      'dl',
      { class: 'conflict-versions' },
      version('Before', base, baseKnown),
      version(sideLabels.ours, ours),
      version(sideLabels.theirs, theirs),
    ),
    element('ul', { class: 'conflict-totals', attributes: { 'aria-label': 'What each comes to' } }),
    element(
      'div',
      { class: 'conflict-choices' },
      ...choices.map((choice) => takeButton(key, choice, title)),
    ),
  );
}

/** Settles a file with conflict markers cell by cell; it stands where the grid would. */
export class ResolvePage {
  readonly root = element('div', { class: 'resolve-page', attributes: { hidden: '' } });
  readonly #ask: Ask;
  readonly #say: (text: string) => void;
  #asking = false;
  /** The job has moved on since it was asked about. */
  #stale = false;
  /** State of the job that was asked about last. */
  #revision: number | undefined;
  #shown = '';

  constructor(ask: Ask, say: (text: string) => void) {
    this.#ask = ask;
    this.#say = say;
    this.root.addEventListener('click', (event) => {
      const { target } = event;
      const control = target instanceof Element ? target.closest('[data-action="settle"]') : null;
      if (control !== null) void this.#settle(control.getAttribute('data-argument') ?? '{}');
    });
  }

  /** Called after every message about the job: the file may have been settled, or a step undone. */
  paint(job: JobView, revision: number): void {
    const isOpen = job.state === 'conflicted';
    setHidden(this.root, !isOpen);
    if (!isOpen) {
      this.#revision = undefined;
      this.#shown = '';
      this.root.replaceChildren();
    } else if (revision !== this.#revision) {
      this.#revision = revision;
      void this.#refresh();
    }
  }

  /** One question at a time: while its figures come in, a job moves on faster than git answers. */
  async #refresh(): Promise<void> {
    this.#stale = true;
    if (this.#asking) return;
    this.#asking = true;
    try {
      while (this.#stale) {
        this.#stale = false;
        const view = await this.#ask({ ask: 'conflicts' });
        if (view !== undefined && !this.root.hidden) void this.#take(view);
      }
    } finally {
      this.#asking = false;
    }
  }

  async #take(view: ResolveView): Promise<void> {
    const text = JSON.stringify(view);
    if (text === this.#shown) return;
    this.#shown = text;
    this.#show(view);
    for (const { key } of view.conflicts) {
      const totals = await this.#ask({ ask: 'conflict-totals', key });
      if (text !== this.#shown) return;
      this.#showTotals(key, totals ?? []);
    }
  }

  #show({ conflicts, message }: ResolveView): void {
    const count = conflicts.length;
    const all = (choice: ConflictChoice): string =>
      JSON.stringify(Object.fromEntries(conflicts.map(({ key }) => [key, choice])));
    const moves = conflicts.map(({ key }) => key).filter((key) => key.endsWith('/order'));
    const oursInMoves = JSON.stringify(Object.fromEntries(moves.map((key) => [key, 'ours'])));
    this.root.replaceChildren(
      element('h2', { text: count === 1 ? '1 conflict' : `${String(count)} conflicts` }),
      element('p', { text: message }),
      element(
        'div',
        { class: 'conflict-choices' },
        ...(count === 0
          ? [button({ action: 'settle', argument: '{}', text: 'Put together', look: 'primary' })]
          : [
              button({ action: 'settle', argument: all('ours'), text: 'Take ours in all' }),
              button({ action: 'settle', argument: all('theirs'), text: 'Take theirs in all' }),
            ]),
        moves.length > 1
          ? button({ action: 'settle', argument: oursInMoves, text: 'Take our places of all rows' })
          : undefined,
      ),
      ...conflicts.map(conflictElement),
    );
  }

  #showTotals(key: string, totals: readonly ConflictTotal[]): void {
    const list = this.root
      .querySelector(`[data-conflict="${CSS.escape(key)}"]`)
      ?.querySelector('.conflict-totals');
    list?.replaceChildren(...totals.map((one) => element('li', { text: totalWords(one) })));
  }

  async #settle(argument: string): Promise<void> {
    const choices = JSON.parse(argument) as Readonly<Record<string, ConflictChoice>>;
    const reply = await this.#ask({ ask: 'settle', choices });
    if (reply !== undefined) this.#say(reply.ok ? 'Settled. Undo takes it back.' : reply.message);
  }
}
