import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';

/** Answers to heavy questions by their keys. */
export type HeavyReplies = ReadonlyMap<string, { question: HeavyQuestion; answer: unknown }>;

/** Answers that are kept, whatever becomes of the job's text: undo finds the old ones again. */
export interface HeavyMemory extends HeavyAnswers {
  /** Takes answers in; tells whether any is new. */
  readonly add: (replies: HeavyReplies) => boolean;
}

/** Answers kept at most; the oldest go first. */
const most = 400;

/** Opens a memory in which there is nothing yet. */
export function openHeavyMemory(): HeavyMemory {
  const answers = new Map<string, unknown>();
  const last = new Map<string, { readonly question: HeavyQuestion; readonly answer: unknown }>();
  return {
    answer: ({ key }) => answers.get(key),
    before: ({ about }) => last.get(about),
    add: (replies) => {
      let added = false;
      for (const [key, reply] of replies) {
        added ||= !answers.has(key);
        answers.set(key, reply.answer);
        last.set(reply.question.about, reply);
      }
      for (const key of answers.keys()) {
        if (answers.size <= most) break;
        answers.delete(key);
      }
      return added;
    },
  };
}
