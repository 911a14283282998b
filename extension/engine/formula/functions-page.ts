import { dimensionName } from '../units/dimension-names.ts';
import type {
  Catalogue,
  FunctionEntry,
  Parameter,
  ParameterType,
  ResultRule,
} from './catalogue.ts';
import { signatureText } from './parameters.ts';
import { rangeText } from './range-text.ts';
import { deviations } from './standard/deviations.ts';

const groupTitles: Readonly<Record<FunctionEntry['group'], string>> = {
  rings: 'Rings',
  aim: 'Aim',
  router: 'Router and saw',
  shapes: 'Shapes',
  resin: 'Resin',
  skin: 'The stretched skin',
  cloth: 'Cloth, vinyl, glue and fasteners',
  box: 'Closed box',
  price: 'Time and price',
  units: 'Units and rounding',
  standard: 'Standard functions',
};

const groups = Object.keys(groupTitles) as readonly FunctionEntry['group'][];

function typeText(type: ParameterType): string {
  switch (type.kind) {
    case 'quantity':
      return type.dimensions.map(dimensionName).join(' or ');
    case 'same':
      return 'number or measure, all alike';
    case 'any-quantity':
      return 'number or measure';
    case 'yes-no':
      return 'yes or no';
    case 'choice':
      return type.choices.map((word) => `\`${word}\``).join(', ');
    case 'shape-or-length':
      return 'length or shape';
    case 'criterion':
      return 'criterion';
    case 'value':
      return 'anything';
    default:
      return type.kind;
  }
}

function resultText(rule: ResultRule): string {
  switch (rule.kind) {
    case 'quantity':
      return dimensionName(rule.dimension);
    case 'same':
      return 'of the same dimension as its arguments';
    case 'branches':
      return 'what the chosen argument is';
    case 'product':
      return 'the product of all dimensions';
    case 'ratio':
      return 'the first dimension per the second';
    case 'power':
      return 'the dimension to that power';
    case 'square':
      return 'the square of the dimension';
    case 'root':
      return 'the root of the dimension';
    case 'yes-no':
      return 'yes or no';
    case 'text':
    case 'shape':
      return rule.kind;
  }
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}

function notes(parameter: Parameter): string {
  return [
    parameter.optional === true ? 'optional' : '',
    parameter.list === true ? 'list' : '',
    parameter.repeats === true ? 'repeats' : '',
  ]
    .filter((note) => note !== '')
    .join(', ');
}

function row(cells: readonly string[]): string {
  return `| ${cells.map(cell).join(' | ')} |`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  return [row(head), row(head.map(() => '---')), ...rows.map(row)];
}

function parameterTable(entry: FunctionEntry): readonly string[] {
  if (entry.parameters.length === 0) return [];
  const rows = entry.parameters.map((parameter) => [
    `\`${parameter.name}\``,
    [typeText(parameter.type), rangeText(parameter)].filter((part) => part !== '').join(', '),
    parameter.help,
    notes(parameter),
  ]);
  return [...table(['Argument', 'Takes', 'Meaning', ''], rows), ''];
}

/** What a function reads of rows is answered in a job only. */
function exampleWord({ rows }: FunctionEntry): string {
  return rows === undefined ? 'Example' : 'Example, in a job';
}

function functionPart(entry: FunctionEntry): readonly string[] {
  return [
    `### \`${signatureText(entry)}\``,
    '',
    entry.help,
    '',
    ...parameterTable(entry),
    `Gives: ${resultText(entry.result)}.`,
    '',
    `${exampleWord(entry)}: \`${entry.example.formula}\` gives \`${entry.example.shows}\`.`,
    '',
    `Source: ${entry.source}.`.replace(/\.\.$/, '.'),
    '',
  ];
}

function groupPart(group: FunctionEntry['group'], catalogue: Catalogue): readonly string[] {
  const entries = [...catalogue.values()].filter((entry) => entry.group === group);
  if (entries.length === 0) return [];
  return [`## ${groupTitles[group]}`, '', ...entries.flatMap(functionPart)];
}

const opening = `# Functions

This page is written from the catalogue that checks and calculates every formula; \`panelwright functions\`
prints the same list. Arguments in square brackets may be left out. A measure is a value with a unit; its
dimension is checked before anything is calculated. Arguments are separated by a comma or a semicolon.`;

const differences = `## Where the standard functions leave OpenFormula

Operators and standard functions follow OpenFormula (OASIS OpenDocument 1.3 part 4). These differ on purpose:`;

/** docs/functions.md: every function of the catalogue, and where the standard ones leave OpenFormula. */
export function functionsPage(catalogue: Catalogue): string {
  const rows = deviations.map(({ formula, openFormula, here, why }) => [
    `\`${formula}\``,
    openFormula,
    here === 'ERR' ? 'no answer' : here,
    why,
  ]);
  const lines = [
    opening,
    '',
    ...groups.flatMap((group) => groupPart(group, catalogue)),
    differences,
    '',
    ...table(['Formula', 'OpenFormula', 'Here', 'Why'], rows),
  ];
  return `${lines.join('\n')}\n`;
}
