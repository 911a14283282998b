import type { PictureView } from '../../extension/protocol/panel-view.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room of a figure in whole pixels; one that is not laid out yet is given what a side pane has. */
export function figureSize(figure: HTMLElement): Size {
  return {
    width: Math.floor(figure.clientWidth) || 320,
    height: Math.floor(figure.clientHeight) || 240,
  };
}

/** How mm of a picture, y up, become pixels, y down. */
export interface Fit {
  /** Pixels a mm. */
  readonly scale: number;
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
}

/** Room that is left free on each side, in pixels. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Fits a box into a place with this much room left free around it. */
export function fitted(box: PictureView['box'], place: Size, room: Margins): Fit {
  const width = Math.max(1e-6, box.right - box.left);
  const height = Math.max(1e-6, box.top - box.bottom);
  const across = Math.max(1, place.width - room.left - room.right);
  const up = Math.max(1, place.height - room.top - room.bottom);
  const scale = Math.min(across / width, up / height);
  const left = room.left + (across - width * scale) / 2;
  const top = room.top + (up - height * scale) / 2;
  return {
    scale,
    x: (mm) => left + (mm - box.left) * scale,
    y: (mm) => top + (box.top - mm) * scale,
  };
}

/** Tenths of a pixel are enough, and the path stays short. */
function shown(px: number): string {
  return String(Math.round(px * 10) / 10);
}

/** Points given as x and y in turn, as a path in pixels. */
export function pathOf(at: readonly number[], closed: boolean, fit: Fit): string {
  let path = '';
  for (let index = 0; index + 1 < at.length; index += 2) {
    const [x = 0, y = 0] = [at[index], at[index + 1]];
    path += `${index === 0 ? 'M' : 'L'}${shown(fit.x(x))} ${shown(fit.y(y))}`;
  }
  return closed && path !== '' ? `${path}Z` : path;
}

/** The head of an arrow at the end of a line, as a path in pixels; empty where the line has no length. */
export function arrowHead(at: readonly number[], fit: Fit): string {
  const [x0, y0, x1, y1] = at.slice(-4);
  if (x0 === undefined || y0 === undefined || x1 === undefined || y1 === undefined) return '';
  const [tipX, tipY] = [fit.x(x1), fit.y(y1)];
  const [dx, dy] = [tipX - fit.x(x0), tipY - fit.y(y0)];
  const far = Math.hypot(dx, dy);
  if (far < 1e-6) return '';
  const [ux, uy] = [dx / far, dy / far];
  const corner = (side: 1 | -1): string => {
    const x = tipX - 9 * ux - side * 3.5 * uy;
    const y = tipY - 9 * uy + side * 3.5 * ux;
    return `${shown(x)} ${shown(y)}`;
  };
  return `M${shown(tipX)} ${shown(tipY)}L${corner(1)}L${corner(-1)}Z`;
}
