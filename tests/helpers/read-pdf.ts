import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** An element of a tagged document with the text that it holds. */
export interface ReadElement {
  readonly role: string;
  readonly text: string;
}

/** A page as somebody else's reader finds it; places are in points from the upper left corner. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
  }[];
  readonly elements: readonly ReadElement[];
}

interface Node {
  readonly role?: string;
  readonly id?: string;
  readonly children?: readonly Node[];
}

/** Leaves of the tree with their text, in the order of reading. */
function leaves(node: Node, texts: ReadonlyMap<string, string>): readonly ReadElement[] {
  return (node.children ?? []).flatMap((child): readonly ReadElement[] => {
    if (child.id === undefined) return leaves(child, texts);
    return [{ role: node.role ?? '', text: (texts.get(child.id) ?? '').trim() }];
  });
}

/** Reads a PDF back: its title, and its pages with texts and tags. */
export async function readPdf(
  bytes: Uint8Array,
): Promise<{ readonly title: string; readonly pages: readonly ReadPage[] }> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const view = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const marked = new Map<string, string>();
    let open = '';
    const texts = items.flatMap((item) => {
      if (!('str' in item)) {
        if (item.type === 'endMarkedContent') open = '';
        else open = item.id;
        return [];
      }
      if (open !== '') marked.set(open, `${marked.get(open) ?? ''} ${item.str}`);
      const [x = 0, y = 0] = (item.transform as readonly number[]).slice(4);
      return [{ text: item.str, x, y: view.height - y, width: item.width }];
    });
    const tree = (await page.getStructTree()) as Node | null;
    const elements = tree === null ? [] : leaves(tree, marked);
    pages.push({ width: view.width, height: view.height, texts, elements });
  }
  const { info } = await document.getMetadata();
  return { title: String((info as { readonly Title?: unknown }).Title), pages };
}
