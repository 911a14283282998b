import type { Answers, FromWebview, Question, ToWebview } from '../extension/protocol/messages.ts';

/** A question's answer never came, or the host refused to answer it. */
export class NotAnswered extends Error {}

type Kind = Question['ask'];
type QuestionOf<Ask extends Kind> = Extract<Question, { readonly ask: Ask }>;

interface Waiting {
  readonly answer: (value: Answers[Kind]) => void;
  readonly fail: (problem: NotAnswered) => void;
  readonly timer: ReturnType<typeof setTimeout>;
}

/** An asked question: its number stands in the `cause` of the patch that an edit leads to. */
export interface Asked<Answer> {
  readonly request: number;
  readonly answer: Promise<Answer>;
}

// Long enough for a loaded machine at the far end of a remote link.
const patienceMs = 30_000;

/** Questions to the host over plain messages; each is answered, refused or timed out. */
export class Channel {
  readonly #post: (message: FromWebview) => void;
  readonly #waiting = new Map<number, Waiting>();
  #last = 0;

  constructor(post: (message: FromWebview) => void) {
    this.#post = post;
  }

  post(message: FromWebview): void {
    this.#post(message);
  }

  ask<Ask extends Kind>(question: QuestionOf<Ask>): Asked<Answers[Ask]> {
    this.#last += 1;
    const request = this.#last;
    const answer = new Promise<Answers[Ask]>((resolve, reject) => {
      const timer = setTimeout(() => {
        this.#waiting.delete(request);
        reject(new NotAnswered('The extension has not answered. Close and reopen the file.'));
      }, patienceMs);
      this.#waiting.set(request, {
        // The request number ties an answer to its question, hence to its type.
        answer: (value) => {
          resolve(value as Answers[Ask]);
        },
        fail: reject,
        timer,
      });
    });
    this.#post({ type: 'ask', request, question });
    return { request, answer };
  }

  /** Takes `reply` and `refused`; anything else is not its business. */
  receive(message: ToWebview): void {
    if (message.type !== 'reply' && message.type !== 'refused') return;
    const waiting = this.#waiting.get(message.request);
    if (waiting === undefined) return;
    this.#waiting.delete(message.request);
    clearTimeout(waiting.timer);
    if (message.type === 'reply') waiting.answer(message.answer);
    else waiting.fail(new NotAnswered(message.message));
  }
}
