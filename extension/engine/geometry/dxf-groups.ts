/** A pair of lines of a DXF file: what the value is, and the value. */
export interface Group {
  readonly code: number;
  readonly value: string;
}

/** A thing in a DXF file with all its groups in order; a POLYLINE has its VERTEX entities after it. */
export interface Entity {
  readonly type: string;
  readonly groups: readonly Group[];
}

/** A block: entities that are drawn wherever it is inserted. */
export interface Block {
  readonly groups: readonly Group[];
  readonly entities: readonly Entity[];
}

/** A DXF file taken apart. */
export interface DxfParts {
  readonly header: ReadonlyMap<string, string>;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly entities: readonly Entity[];
}

function groupsOf(text: string): Group[] | undefined {
  const lines = text.split(/\r\n|\n|\r/);
  const groups: Group[] = [];
  for (let index = 0; index + 1 < lines.length; index += 2) {
    const code = Number(lines[index]?.trim());
    if (!Number.isInteger(code)) return undefined;
    groups.push({ code, value: (lines[index + 1] ?? '').trim() });
    if (code === 0 && groups.at(-1)?.value === 'EOF') break;
  }
  return groups;
}

/** Text of the first group with this code. */
export function groupText({ groups }: Pick<Entity, 'groups'>, code: number): string | undefined {
  return groups.find((group) => group.code === code)?.value;
}

/** Number of the first group with this code; `otherwise` where there is none. */
export function groupNumber(
  entity: Pick<Entity, 'groups'>,
  code: number,
  otherwise: number,
): number {
  const number = Number(groupText(entity, code) ?? NaN);
  return Number.isFinite(number) ? number : otherwise;
}

/** The entities of a run of groups, each from its group 0. */
function entitiesOf(groups: readonly Group[]): readonly Entity[] {
  const entities: { type: string; groups: Group[] }[] = [];
  for (const group of groups) {
    if (group.code === 0) entities.push({ type: group.value, groups: [] });
    else entities.at(-1)?.groups.push(group);
  }
  return entities;
}

function headerOf(groups: readonly Group[]): ReadonlyMap<string, string> {
  const header = new Map<string, string>();
  let name = '';
  for (const { code, value } of groups) {
    if (code === 9) name = value;
    else if (name !== '' && !header.has(name)) header.set(name, value);
  }
  return header;
}

function blocksOf(entities: readonly Entity[]): ReadonlyMap<string, Block> {
  const blocks = new Map<string, { groups: readonly Group[]; entities: Entity[] }>();
  let open: Entity[] | undefined;
  for (const entity of entities) {
    if (entity.type === 'BLOCK') {
      open = [];
      blocks.set(groupText(entity, 2) ?? '', { groups: entity.groups, entities: open });
    } else if (entity.type === 'ENDBLK') open = undefined;
    else open?.push(entity);
  }
  return blocks;
}

const sectionMarks: readonly string[] = ['ENDSEC', 'SECTION', 'EOF'];

function sectionsOf(groups: readonly Group[]): ReadonlyMap<string, Group[]> {
  const sections = new Map<string, Group[]>();
  let section: Group[] | undefined;
  let isNamed = true;
  for (const group of groups) {
    if (group.code === 0 && sectionMarks.includes(group.value)) {
      section = undefined;
      isNamed = group.value !== 'SECTION';
    } else if (group.code === 2 && !isNamed) {
      section = sections.get(group.value) ?? [];
      sections.set(group.value, section);
      isNamed = true;
    } else section?.push(group);
  }
  return sections;
}

/**
 * Takes a DXF text apart into groups, header variables, blocks and entities.
 *
 * @returns the reason in words where the text is no DXF
 * @source AutoCAD DXF reference: a file is pairs of lines, code and value
 */
export function readDxfParts(text: string): DxfParts | string {
  if (text.startsWith('AutoCAD Binary DXF')) return 'it is a binary DXF; save it as ASCII DXF';
  const groups = groupsOf(text);
  if (groups?.some(({ code, value }) => code === 0 && value === 'SECTION') !== true) {
    return 'it is no DXF';
  }
  const sections = sectionsOf(groups);
  return {
    header: headerOf(sections.get('HEADER') ?? []),
    blocks: blocksOf(entitiesOf(sections.get('BLOCKS') ?? [])),
    entities: entitiesOf(sections.get('ENTITIES') ?? []),
  };
}
