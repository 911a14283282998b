import { problemMaker } from '../problems.ts';

/** What may stand between a row and the bill; codes are permanent. */
export const billProblemTexts = {
  'need-unanswered':
    '{row}: {column} has no answer, so what it takes of {material} is not in the bill.',
  'need-blank':
    '{row} takes {material}, but {column} is blank: say how much of it one piece takes.',
  'need-negative': '{row}: {column} is {value}. Nothing can be bought for a negative amount.',
  'material-blank': '{row} has no material for {column}: pick one, or write none.',
  'price-blank': '{row} has no price: write what it costs.',
  'material-unknown':
    '{row}: there is no material called {material} in the shop book or in this job.',
  'material-unsold':
    '{material} has no price: add a pack with what it holds and its price, so that {row} can be bought.',
  'property-missing': '{material} has no {property}; needed to buy {amount} by the {unit}.',
  'unit-unfitting': '{row}: {amount} of {material} cannot be bought by the {unit}.',
  'count-word-differs':
    '{row} asks for {amount}, but {material} is counted by the {unit}: write {unit}, or pick another material.',
  'pack-unreadable': 'Pack {pack} of {material}: {column} {fault}.',
  'price-drifted':
    'The job holds {pack} of {material} at {held}{since}; the book now says {now} ({change}).',
  'price-held-twice':
    'The price of {pack} is held by {first} and by {row}: {first} counts; delete one.',
  'price-held-unfitting':
    '{row} holds the {given} of {pack}, which is sold by its {column}: write its {column}.',
  'price-unfitting':
    '{row}: its price {value} is neither money nor money for a unit that {use} can be turned into.',
  'blank-too-wide':
    '{row}: the blank {size} does not lie across {material}, which is {width} wide: turn it, make it of two, or pick a wider one.',
  'blank-too-large':
    '{row}: the blank {size} is larger than any {material} that is sold: make it of two, or add a larger stock.',
  'piece-too-long':
    '{row}: a piece of {size} is longer than any {material} that is sold: make it of two, or add a longer stock.',
  'driver-unpriced':
    '{driver} has no price: write what it costs, or set supply to client or in_car.',
  'driver-unheld': 'No baffle holds {driver}, so it is not bought: link it from a baffle.',
  'shelf-life':
    '{material}: of {pack}, {left} is left over when this job has taken {need}, and it keeps for {life} only. Use the rest by then, or buy {packs} instead for {more} {way}, and throw less away.',
  'order-raised':
    '{supplier} takes orders from {minimum} on, and this job needs {sum} of them, {missing} less: {packs} make it up for {more} more{instead}. The price of the job stays as it is; what is left over is stock.',
  'order-surcharge':
    '{supplier} takes orders from {minimum} on, and this job needs {sum} of them, {missing} less: {surcharge} is added for a small order. {way}',
  'order-small':
    '{supplier} takes orders from {minimum} on, and this job needs {sum} of them, {missing} less. Nothing of this job is sold so that it makes that up: order it together with something else, or say what they add to a small order.',
  'lock-unheld':
    '{row}: {part} does not stay{place}: {why}. It is laid like any other part; delete {row}, or lock the part anew where it lies now.',
  'hand-unmatched': '{row} is for the {hand} hand, but its panel {panel} is made {other} only.',
} as const;

export type BillProblemCode = keyof typeof billProblemTexts;

/** Makes a problem of the bill from its code, the details its sentence names, and its place. */
export const billProblem = problemMaker<BillProblemCode>(billProblemTexts);
