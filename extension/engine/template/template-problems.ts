import { problemMaker } from '../problems.ts';

/** What is wrong with templates, and with answers to their questions. */
export const templateProblem = problemMaker({
  'ask-empty':
    'The question “{id}” sets no cell and keeps no row; name a cell in its sets, such as base.length or job.temperature.',
  'ask-cell-unknown':
    'The question “{id}” sets “{cell}”, but there is no such cell; write row.column or job.setting.',
  'ask-row-unknown': 'The question “{id}” keeps “{row}”, but no row has that id.',
  'ask-start-unfit': 'The question “{id}” offers “{text}”, which it would refuse: {message}',
  'answer-needed': '{name}: an answer is needed.',
  'answer-unfit': '{name}: {message}',
  'answer-below': '{name}: {text} is below the least, {limit}.',
  'answer-above': '{name}: {text} is above the most, {limit}.',
  'answer-not-offered': '{name}: “{text}” is not offered; choose one of {choices}.',
  'ask-not-there': 'The template asks nothing called “{id}”; it asks for {known}.',
});
