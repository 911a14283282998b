import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';

/**
 * Draws the extension's icon: a tilted ring standing on an upholstered panel. Every point is sampled
 * 16 times; shapes are painted from back to front.
 */
const size = 256;
const grid = 4;

/** Signed distance to a rounded rectangle; negative inside. */
function roundedBox(x, y, [cx, cy, halfWidth, halfHeight, radius]) {
  const dx = Math.abs(x - cx) - halfWidth + radius;
  const dy = Math.abs(y - cy) - halfHeight + radius;
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - radius;
}

/** Below 1 inside an ellipse whose long axis is turned by `turn` radians. */
function ellipse(x, y, [cx, cy, long, short, turn]) {
  const u = (x - cx) * Math.cos(turn) + (y - cy) * Math.sin(turn);
  const v = (y - cy) * Math.cos(turn) - (x - cx) * Math.sin(turn);
  return Math.hypot(u / long, v / short);
}

const tilt = -0.42;
const rim = [128, 106, 84, 58, tilt];
const foot = [128, 140, 84, 58, tilt * 0.4];
const opening = [128, 106, 60, 39, tilt];

const panel = [36, 41, 54];
const shapes = [
  { colour: panel, holds: (x, y) => roundedBox(x, y, [128, 128, 120, 120, 34]) < 0 },
  {
    colour: [70, 79, 102],
    holds: (x, y) =>
      Math.abs(roundedBox(x, y, [128, 128, 104, 104, 24])) < 2.4 && (x + y) % 18 < 11,
  },
  { colour: [176, 109, 44], holds: (x, y) => wall(x, y) },
  { colour: [244, 178, 84], holds: (x, y) => ellipse(x, y, rim) < 1 },
  { colour: [22, 25, 33], holds: (x, y) => ellipse(x, y, opening) < 1 },
  { colour: [104, 116, 148], holds: (x, y) => ellipse(x, y, [128, 108, 50, 31, tilt]) < 1 },
  { colour: [52, 59, 78], holds: (x, y) => ellipse(x, y, [128, 109, 22, 14, tilt]) < 1 },
];

/** The ring's wall: what lies between its rim and its foot. */
function wall(x, y) {
  for (let step = 0; step <= 20; step += 1) {
    const share = step / 20;
    const slice = rim.map((value, index) => value + (foot[index] - value) * share);
    if (ellipse(x, y, slice) < 1) return true;
  }
  return false;
}

function sample(x, y) {
  const shape = shapes.findLast((one) => one.holds(x, y));
  return shape === undefined ? [0, 0, 0, 0] : [...shape.colour, 255];
}

function pixel(column, row) {
  const sum = [0, 0, 0, 0];
  for (let index = 0; index < grid * grid; index += 1) {
    const x = column + ((index % grid) + 0.5) / grid;
    const y = row + (Math.floor(index / grid) + 0.5) / grid;
    const [red, green, blue, alpha] = sample(x, y);
    sum[0] += red * alpha;
    sum[1] += green * alpha;
    sum[2] += blue * alpha;
    sum[3] += alpha;
  }
  const colour = sum.slice(0, 3).map((value) => (sum[3] === 0 ? 0 : Math.round(value / sum[3])));
  return [...colour, Math.round(sum[3] / (grid * grid))];
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

function png() {
  const rows = Array.from({ length: size }, (_, row) => [
    0,
    ...Array.from({ length: size }, (__, column) => pixel(column, row)).flat(),
  ]);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(Buffer.from(rows.flat()), { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const root = dirname(dirname(fileURLToPath(import.meta.url)));
writeFileSync(join(root, 'docs/images/icon.png'), png());
