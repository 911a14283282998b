import { catalogue, dimensionName, type FunctionEntry } from '../engine/index.ts';

function parameterText({ name, optional, repeats }: FunctionEntry['parameters'][number]): string {
  const shown = repeats === true ? `${name}…` : name;
  return optional === true ? `[${shown}]` : shown;
}

/** What a parameter's values measure; empty where it is no quantity or takes any. */
function dimensionsOf(type: FunctionEntry['parameters'][number]['type']): readonly string[] {
  switch (type.kind) {
    case 'quantity':
      return type.dimensions.map(dimensionName);
    case 'shape-or-length':
      return ['length'];
    default:
      return [];
  }
}

function resultOf({ result }: FunctionEntry): { rule: string; dimension: string | null } {
  return {
    rule: result.kind,
    dimension: result.kind === 'quantity' ? dimensionName(result.dimension) : null,
  };
}

/** `RING.LOW(depth, size, tilt)`. */
export function signatureText({ name, parameters }: FunctionEntry): string {
  return `${name}(${parameters.map(parameterText).join(', ')})`;
}

/** Every function with its help and an example, group after group. */
export function functionsReport(): string {
  const groups = new Map<string, FunctionEntry[]>();
  for (const entry of catalogue.values()) {
    groups.set(entry.group, [...(groups.get(entry.group) ?? []), entry]);
  }
  const parts = [...groups].map(([group, entries]) => {
    const lines = entries.map((entry) => {
      const { formula, shows } = entry.example;
      return `  ${signatureText(entry)}\n      ${entry.help}\n      ${formula} shows ${shows}\n`;
    });
    return `${group.charAt(0).toUpperCase()}${group.slice(1)}\n${lines.join('')}`;
  });
  return parts.join('\n');
}

/** Every function for programs. */
export function functionsJson(): object {
  return {
    format: 1,
    functions: [...catalogue.values()].map((entry) => ({
      name: entry.name,
      group: entry.group,
      signature: signatureText(entry),
      help: entry.help,
      parameters: entry.parameters.map((parameter) => ({
        name: parameter.name,
        help: parameter.help,
        type: parameter.type.kind,
        dimensions: dimensionsOf(parameter.type),
        choices: parameter.type.kind === 'choice' ? parameter.type.choices : [],
        range: parameter.range ?? null,
        optional: parameter.optional === true,
        list: parameter.list === true,
        repeats: parameter.repeats === true,
      })),
      result: resultOf(entry),
      example: entry.example,
      source: entry.source,
    })),
  };
}
