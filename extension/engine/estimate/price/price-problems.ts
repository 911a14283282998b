import { problemMaker } from '../../problems.ts';

const texts = {
  'charge-kind-missing':
    '{charge} has no kind, so nothing says what it does with the price: choose labour, markup, tax or another.',
  'charge-unanswered': '{charge} has no amount, because {column} has no answer: {reason}',
  'charge-blank': '{charge} has no {wanted}: type one.',
  'charge-unfitting': '{charge}: {column} is {value}; {wanted} is wanted.',
  'charge-outside': '{charge}: {column} is {value}; it must be {range}.',
  'charge-of-unknown':
    '{charge} is of “{word}”, which is no row, no group and none of labour, materials and all.',
  'charge-of-later':
    '{charge} is of {word}, which comes after it. Charges go from top to bottom: move it below.',
  'labour-unpriced': '{hours} of work have no rate: {tasks}. Add a charge of the kind labour.',
  'labour-again':
    '{charge} has no hours left: what is above it took them all. Say which phases, kinds or tasks each is of.',
  'supplies-twice':
    '{charge} takes {amount} for what is too small to list, and shop supplies for {listed} are listed as rows too. Keep one of the two.',
  'markup-and-margin':
    '{charge} is a margin on what {other} has marked up already. A markup is of the cost, a margin of the price: keep one of them on it.',
  'payments-over': 'Deposit and stages come to {sum}, which is more than the total of {total}.',
} as const;

export type PriceProblemCode = keyof typeof texts;

/** Makes a problem of the charges sheet. */
export const priceProblem = problemMaker<PriceProblemCode>(texts);
