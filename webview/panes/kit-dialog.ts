import type { RowAddress } from '../../extension/protocol/messages.ts';
import type { KitPreview, KitQuestionView, KitView } from '../../extension/protocol/kit-view.ts';
import { openDialog, type Dialog } from '../dialogs.ts';
import { element } from '../dom.ts';
import { choiceField, fieldValue, setDisabled, textField, yesNoField } from '../form.ts';
import type { Ask } from '../suggest/suggester.ts';

const previewDelayMs = 120;

type Answers = Readonly<Record<string, string>>;

/** Asks a kit's questions with a preview of its rows; the answers, or `undefined` if put off. */
export async function askKit(
  ask: Ask,
  kitId: string,
  row: RowAddress | undefined,
): Promise<Answers | undefined> {
  const kit = await ask({ ask: 'kit', kit: kitId, row });
  if (kit === undefined) return undefined;
  return new KitForm(kit, {
    name: 'kit',
    agree: 'Insert',
    preview: (answers) => ask({ ask: 'kit-preview', kit: kit.id, answers }),
  }).answers();
}

/** Asks what the job's template asks, with what the job then comes to; `undefined` if put off. */
export async function askTemplate(ask: Ask): Promise<Answers | undefined | 'nothing'> {
  const view = await ask({ ask: 'asks' });
  if (view === undefined) return undefined;
  if (view.questions.length === 0) return 'nothing';
  return new KitForm(view, {
    name: 'asks',
    agree: 'Write job',
    preview: (answers) => ask({ ask: 'asks-preview', answers }),
  }).answers();
}

/** What sets one form of questions apart from another. */
interface FormUse {
  readonly name: string;
  readonly agree: string;
  readonly preview: (answers: Answers) => Promise<KitPreview | undefined>;
}

class KitForm {
  readonly #kit: KitView;
  readonly #use: FormUse;
  readonly #fields: ReadonlyMap<string, Element>;
  readonly #faults = new Map<string, HTMLElement>();
  readonly #preview = element('div', {
    class: 'kit-preview',
    attributes: { 'aria-live': 'polite' },
  });
  readonly #dialog: Dialog;
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(kit: KitView, use: FormUse) {
    this.#kit = kit;
    this.#use = use;
    this.#fields = new Map(kit.questions.map((question) => [question.key, fieldOf(question)]));
    this.#dialog = openDialog({
      title: kit.name,
      name: use.name,
      agree: use.agree,
      body: [
        ...(kit.help === '' ? [] : [element('p', { class: 'card-help', text: kit.help })]),
        element(
          'div',
          { class: 'questions' },
          ...kit.questions.map((question) => this.#question(question)),
        ),
        this.#preview,
      ],
    });
    for (const name of ['input', 'change'])
      this.#dialog.root.addEventListener(name, () => {
        this.#soon();
      });
  }

  async answers(): Promise<Answers | undefined> {
    const first = this.#fields.values().next().value;
    if (first instanceof HTMLElement) first.focus();
    void this.#show();
    const agreed = await this.#dialog.closed;
    clearTimeout(this.#timer);
    return agreed ? this.#read() : undefined;
  }

  #question(question: KitQuestionView): HTMLElement {
    const fault = element('p', { class: 'field-note', attributes: { hidden: '' } });
    this.#faults.set(question.key, fault);
    const must = question.required ? ' (needed)' : '';
    return element(
      'div',
      { class: `question ${question.type}`, data: { question: question.key } },
      element('span', { class: 'question-label', text: `${question.label}${must}` }),
      this.#fields.get(question.key),
      question.help === '' ? undefined : element('p', { class: 'small', text: question.help }),
      fault,
    );
  }

  #read(): Answers {
    const answers: Record<string, string> = {};
    for (const [key, field] of this.#fields) answers[key] = fieldValue(field).trim();
    return answers;
  }

  #soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#show(), previewDelayMs);
  }

  async #show(): Promise<void> {
    const asked = (this.#asked += 1);
    const answers = this.#read();
    const preview = await this.#use.preview(answers);
    if (asked !== this.#asked || preview === undefined) return;
    const missing = this.#kit.questions.some(
      ({ key, required }) => required && answers[key] === '',
    );
    const faults = Object.keys(preview.problems).length > 0;
    setDisabled(this.#dialog.root.querySelector('[data-action="dialog-agree"]'), missing || faults);
    for (const [key, fault] of this.#faults) {
      const text = preview.problems[key] ?? '';
      fault.textContent = text;
      fault.hidden = text === '';
    }
    this.#preview.replaceChildren(...previewParts(preview));
  }
}

function fieldOf(question: KitQuestionView): Element {
  const props = { name: question.key, label: question.label, value: question.start };
  if (question.type === 'choice') return choiceField(props, question.options);
  return question.type === 'yes-no' ? yesNoField(props) : textField(props);
}

function totalsParts({ totals }: KitPreview): readonly HTMLElement[] {
  const lines = totals.flatMap(({ label, value }) => [
    element('dt', { text: label }),
    element('dd', { text: value }),
  ]);
  return [
    element('h3', { text: 'The job comes to' }),
    element('dl', { class: 'totals' }, ...lines),
  ];
}

function previewParts(preview: KitPreview): readonly HTMLElement[] {
  if (preview.totals.length > 0) return totalsParts(preview);
  if (preview.rows.length === 0) return [];
  const count = preview.rows.length;
  const title = count === 1 ? 'Writes 1 row' : `Writes ${String(count)} rows`;
  return [
    element('h3', { text: title }),
    element(
      'ul',
      {},
      ...preview.rows.map((row) =>
        element(
          'li',
          {},
          element('span', { class: 'small', text: row.table }),
          element('code', { text: row.id }),
          element('span', { text: row.words }),
        ),
      ),
    ),
  ];
}
