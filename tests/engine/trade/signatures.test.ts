import { describe, expect, test } from 'vitest';
import { signatureText } from '../../../extension/engine/formula/parameters.ts';
import { tradeFunctions } from '../../../extension/engine/trade/trade-functions.ts';
import { dimensionName } from '../../../extension/engine/units/dimension-names.ts';

// Names and order of arguments are written in people's files: they stay.
const signatures = `
RING.LEAST(size, tilt, low, [build]) length
RING.LOW(depth, size, [tilt], [build]) length
RING.HIGH(depth, size, [tilt], [build]) length
RING.STRIP(size, [tilt], [build], [thickness], [lap]) length
RING.WALL(depth, size, [tilt], [build]) area
RING.SHADOW(size, [tilt], [build]) area
RING.RADIUS(size, [tilt], [build]) length
RING.VOLUME(depth, size, [tilt], [build]) volume
RING.DEPTH(driver_depth, behind, clearance, [tilt], [magnet]) length
SHIM.HEIGHT(size, tilt, [station]) length
DRIVER.CLEARANCE(centre_depth, driver_depth, magnet, tilt, behind) length
DRIVER.REACH(driver_depth, magnet, tilt) length
AIM.TILT(x, y, z, [x2], [y2], [z2]) angle
AIM.TURN(x, y, z, [x2], [y2], [z2]) angle
AIM.OFFAXIS(x, y, z, tilt, turn) angle
AIM.DISTANCE(x, y, z) length
DRIVER.OFFAXISLOSS(cone, frequency, angle) number
BOX.VOLUME(vas, qts, qtc) volume
BOX.QTC(vas, qts, volume) number
BOX.RESONANCE(fs, vas, volume) frequency
BOX.F3(fs, vas, qts, volume) frequency
BEARING.OFFSET(cutter, bearing) length
BEARING.SIZE(cutter, offset) length
BUSHING.OFFSET(bushing, bit) length
BUSHING.TEMPLATE(size, bushing, bit, side) length
JIG.RADIUS(diameter, bit, side) length
HOLESAW.SIZE(diameter) length
GRILLE.SIZE(opening, covering, clearance, [layers]) length
circle(diameter) shape
oval(length, width) shape
rect(length, width) shape
roundrect(length, width, radius) shape
polygon(x, …, y, …) shape
path(file, [unit]) shape
SHAPE.AREA(shape) area
SHAPE.PERIMETER(shape) length
SHAPE.LENGTH(shape) length
SHAPE.WIDTH(shape) length
SHAPE.GROW(shape, distance, [corners]) shape
RESIN.SOAK(area, uptake, [layers]) mass
RESIN.GLASS(area, glass_weight, layers, ratio) mass
RESIN.FILM(area, thickness, density) mass
RESIN.VOLUME(mass, density) volume
LAMINATE.THICKNESS(glass_weight, glass_fraction, glass_density, resin_density) length
MIX.QUANTITY(resin, percent, basis, resin_density, catalyst_density) volume
MIX.CHART(temperature) number
MIX.BORDER(temperature) temperature difference
MIX.PERCENT(resin_mass, catalyst_mass) number
MIX.DROPS(volume, drop) number
MIX.POTLIFE(percent, temperature, test_minutes, test_percent, test_temperature) time
MIX.BATCHES(total, pot, [spread_rate], [pot_life]) number
WRAP.SIZE(size, edge, turn, grip) length
CLOTH.REPEAT(length, across, along, width) length
GLUE.COVERAGE(net, solids, dry_coat) area
GLUE.NEED(area, faces, dry_coat, solids) mass
STAPLE.COUNT(perimeter, spacing) number
BOARD.MASS(area, thickness, density) mass
BUILD.UP(row) length
PACKS(need, pack, [slack]) number
TIME.THREEPOINT(low, likely, high) time
TIME.LEARN(first, rate, unit, model) time
TIME.LEARNTOTAL(first, rate, unit, model) time
PRICE.FROMMARGIN(cost, margin) money
MARKUP.FROMMARGIN(margin) number
ROUNDTO(x, step) same
ROUNDUPTO(x, step) same
ROUNDDOWNTO(x, step) same
SHOW(x, [unit]) text
`;

describe('signatures of the trade functions', () => {
  const listed = signatures.trim().split('\n');
  const made = tradeFunctions.map((entry) => {
    const { result } = entry;
    const gives = result.kind === 'quantity' ? dimensionName(result.dimension) : result.kind;
    return `${signatureText(entry)} ${gives}`;
  });

  test.each(listed)('%s', (signature) => {
    expect(made).toContain(signature);
  });

  test('none is missing from this list, none is listed that is not there', () => {
    expect([...made].sort()).toEqual([...listed].sort());
  });

  test.each([
    ['RING.LOW', 'build', ['round_baffle', 'round_tube', 'square_wall']],
    ['BUSHING.TEMPLATE', 'side', ['inside', 'outside']],
    ['JIG.RADIUS', 'side', ['hole', 'disc']],
    ['MIX.QUANTITY', 'basis', ['by_mass', 'by_volume', 'ml_per_100g']],
    ['TIME.LEARN', 'model', ['unit', 'average']],
    ['TIME.LEARNTOTAL', 'model', ['unit', 'average']],
  ])('%s: %s is one of %j', (name, parameter, choices) => {
    const entry = tradeFunctions.find((one) => one.name === name);
    const type = entry?.parameters.find((one) => one.name === parameter)?.type;
    expect(type).toEqual({ kind: 'choice', choices });
  });

  test.each([
    ['RING.LOW', 'size', 'shape-or-length'],
    ['RING.STRIP', 'size', 'shape-or-length'],
    ['SHAPE.AREA', 'shape', 'shape'],
    ['BUILD.UP', 'row', 'row'],
    ['SHOW', 'unit', 'unit'],
    ['PACKS', 'need', 'same'],
  ])('%s takes as %s a %s', (name, parameter, kind) => {
    const entry = tradeFunctions.find((one) => one.name === name);
    expect(entry?.parameters.find((one) => one.name === parameter)?.type.kind).toBe(kind);
  });

  test.each([
    ['MIX.QUANTITY', ['mass or volume', 'number', '', 'mass per volume', 'mass per volume']],
    [
      'MIX.BATCHES',
      ['volume or mass', 'volume or mass', 'volume per time or mass per time', 'time'],
    ],
    ['RESIN.VOLUME', ['mass or volume', 'mass per volume']],
    ['MIX.POTLIFE', ['number', 'temperature', 'time', 'number', 'temperature']],
    ['RESIN.GLASS', ['area', 'mass per area', 'number', 'number']],
    ['GLUE.NEED', ['area', 'number', 'mass per area', 'number']],
    ['AIM.OFFAXIS', ['length', 'length', 'length', 'angle', 'angle']],
    ['DRIVER.OFFAXISLOSS', ['length', 'frequency', 'angle']],
    ['DRIVER.CLEARANCE', ['length', 'length', 'length', 'angle', 'length']],
    ['BOX.F3', ['frequency', 'volume', 'number', 'volume']],
    ['PRICE.FROMMARGIN', ['money', 'number']],
    ['TIME.LEARN', ['time', 'number', 'number', '']],
  ])('%s takes %j', (name, taken) => {
    const entry = tradeFunctions.find((one) => one.name === name);
    const types = entry?.parameters.map(({ type }) =>
      type.kind === 'quantity' ? type.dimensions.map(dimensionName).join(' or ') : '',
    );
    expect(types).toEqual(taken);
  });
});
