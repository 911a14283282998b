/** A part row of a job file; texts are written as they are given. */
export function part(id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `[[part]]\nid = "${id}"\n\n${lines.join('\n')}\n\n`;
}

/** A measure of a job file. */
export function measure(id: string, value: string): string {
  return `[[measure]]\nid = "${id}"\n\nvalue = "${value}"\n\n`;
}

/** A kind of part in a shop book, with the keys given. */
export function kind(id: string, keys: Readonly<Record<string, string>>): string {
  const lines = Object.entries(keys).map(([key, text]) => `${key} = '${text}'`);
  return `[[kind]]\nid = "${id}"\n\nname = "${id}"\ntable = "part"\ngroup = "structure"\ntakes = "none"\n\n${lines.join('\n')}\n\n`;
}
