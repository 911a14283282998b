import type { CutInstance, Report } from '../cutting/instance.ts';
import { settledLayout } from '../cutting/settled-layout.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import { workedOut as skinWorkedOut } from '../skin/heavy-skin.ts';

/** Works out what a heavy question asks: the same answer on every machine, however long it takes. */
export function workedOut(question: HeavyQuestion, report?: Report): unknown {
  return question.kind === 'layout'
    ? settledLayout(question.body as CutInstance, report)
    : skinWorkedOut(question);
}
