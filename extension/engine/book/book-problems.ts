import { problemMaker } from '../problems.ts';

/** Problems of a shop book, of kinds and kits, and of what a job lays over them. */
export const bookProblem = problemMaker({
  'book-file-faulty':
    'The shop book cannot be read in full; first of {count}: {message} Open the book as text to mend it.',
  'book-currency-differs':
    'This job is in {job} but its shop book is in {book}; give the job a book in {job} or change its currency.',
  'kind-name-missing': 'The kind “{id}” has no name; give it one that people can choose by.',
  'kind-word-unknown':
    'The kind “{id}” has “{text}” as its {key}; it may be: {choices}. {fallback} is taken instead.',
  'kind-on-unknown':
    'The kind “{id}” may stand on “{other}”, but there is no such kind; correct its key on.',
  'kind-hazard-unknown':
    'The kind “{id}” names the hazard “{text}”, which no caution speaks of; it may be: {choices}.',
  'kind-label-missing':
    'The kind “{id}” uses the column {column} without saying what it is there; add label.{column} and hint.{column}.',
  'kind-rule-unsaid':
    'The kind “{id}” has the rule “{rule}” without a sentence for when it is broken; add say.{rule}.',
  'draw-material-missing':
    'The kind “{id}” draws “{draw}” without saying which material; add draw.{draw}.material.',
  'material-form-unknown':
    'The material “{id}” has {form}; its form may be: {choices}. Until then it cannot be bought.',
  'material-unknown':
    'The kind “{id}” takes “{material}” for {column}, which is no material of the book.',
  'pack-material-unknown':
    'The pack “{id}” is of “{material}”, which is no material of the book; correct its material.',
  'pack-incomplete':
    'The pack “{id}” does not say what it costs; give it holds and price, or step and rate.',
  'pack-currency-differs':
    'The pack “{id}” has its {column} in {code}, but the book is in {currency}; write it in {currency}.',
  'constant-blank': 'The constant “{id}” has no value; formulas that read book.{id} wait for it.',
  'band-incomplete':
    'The band “{id}” of the chart “{chart}” has no {column}; a band has chart, from, to and value.',
  'kit-unknown': 'The {table} “{id}” belongs to “{kit}”, but there is no such kit.',
  'kit-key-unknown':
    'Row “{id}” of the kit “{kit}” asks for {key} in its {column}, but no question has that key.',
  'kit-id-missing':
    'Row “{id}” of the kit “{kit}” does not say its table and its id; add table and row.',
});
