import { problemMaker } from '../problems.ts';

/** Reasons why an edit cannot be made. */
export const editProblem = problemMaker({
  'file-conflicted':
    'The file holds git’s conflict markers; open it as text and keep one of the two versions first.',
  'file-newer': 'The file has a newer format than this version writes; it is only shown.',
  'file-unreadable': 'The file cannot be read; open it as text and mend it first.',
  'edit-row-missing': 'There is no {table} called {id} (any more).',
  'edit-row-locked': '{table} {id} cannot be read, so it takes no edit; mend it in the text first.',
  'edit-head-locked': '[{table}] cannot be read, so it takes no edit; mend it in the text first.',
  'edit-table-unknown': '{table} is not a table of this file.',
  'edit-id-ill-formed': '“{id}” cannot be an id: small letters, digits and _, with a letter first.',
  'edit-id-reserved': '“{id}” cannot be an id, because it is a word of formulas; use another.',
  'edit-id-taken': 'There is a row called {id} already; use another id.',
  'edit-id-needed': 'A row needs its id; it can be renamed, not cleared.',
  'edit-key-clash': '{key} cannot be written beside what {row} holds already.',
  'format-step-missing': 'There is no step that leads from format {from} to {to}.',
});
