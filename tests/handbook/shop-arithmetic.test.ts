import { describe, expect, test } from 'vitest';
import { baseOf, literal, numberOf, shown } from '../helpers/calculated.ts';

// Sums of the trade that need no function of their own, written as a shop would write them in a cell.
describe('gallons by printed coverage', () => {
  test('100 sqft of 3/4 oz mat at 50 and 200 sqft of 1 1/2 oz at 30 sqft/gal: 8.667 gal; known misprint: printed 8.6 (rayplex.ca)', () => {
    const gallons = numberOf('100sqft/(50sqft/1gal) + 200sqft/(30sqft/1gal)', 'gal');
    expect(Math.abs(gallons - 8.667)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(gallons - 8.6)).toBeGreaterThan(0.06);
  });

  test('90 sqft of 10 oz cloth at 60 sqft/gal: 1.5 gal (lbifiberglass.com)', () => {
    expect(numberOf('90sqft/(60sqft/1gal)', 'gal')).toBeCloseTo(1.5, 12);
  });

  test('108 in of 38 in cloth: 2.84, so three strips (lbifiberglass.com)', () => {
    expect(numberOf('108in/38in')).toBeCloseTo(2.84, 2);
    expect(numberOf('PACKS(108in, 38in)')).toBe(3);
  });

  test.each([
    [4, 15],
    [6, 10],
  ])(
    'a gallon wets 60 oz of cloth: %d oz cloth, %d sqyd (support.totalboat.com)',
    (ounces, yards) => {
      expect(numberOf(`60oz/(${literal(ounces)}oz/sqyd)`, 'sqyd')).toBeCloseTo(yards, 9);
    },
  );

  test('the same rule gives 6 sqyd of 10 oz cloth, where the page prints 6.5 (support.totalboat.com)', () => {
    expect(numberOf('60oz/(10oz/sqyd)', 'sqyd')).toBeCloseTo(6, 9);
  });

  test.each([
    [56, 12, 0.991, 0.99],
    [61, 6, 0.769, 0.77],
  ])('epoxy for %d sqft of %d oz cloth: %d gal, printed %d (Epoxyworks)', (...row) => {
    const [area, ounces, worked, printed] = row;
    const gallons = numberOf(`${literal(area)}*(${literal(ounces)}*0.00085 + 0.0075)`);
    expect(Math.abs(gallons - worked)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(gallons - printed)).toBeLessThanOrEqual(0.005);
  });

  test('both together: 1.760 gal, printed 1.76 (Epoxyworks, cover coats and 15 % waste)', () => {
    const gallons = numberOf('56*(12*0.00085 + 0.0075) + 61*(6*0.00085 + 0.0075)');
    expect(Math.abs(gallons - 1.76)).toBeLessThanOrEqual(0.001);
  });

  test('1 kg of gel coat covers about 1.6 m²: 0.52 mm at 1.2 g/cm3 (ecfibreglasssupplies.co.uk, 0.4 to 0.6 mm)', () => {
    const thick = numberOf('1kg/(1.6m2*1.2g/cm3)', 'mm');
    expect(thick).toBeGreaterThan(0.4);
    expect(thick).toBeLessThan(0.6);
  });
});

describe('styrene lost from resin (40 CFR 63 subpart VVVV, table 3: 0.014 × HAP^2.275, nonatomized)', () => {
  test.each([
    [40, 61.78],
    [35, 45.59],
  ])('%d %% HAP: %d kg a tonne', (percent, kilograms) => {
    const worked = numberOf(`0.014*POWER(${literal(percent)}, 2.275)`);
    expect(Math.abs(worked - kilograms)).toBeLessThanOrEqual(0.05);
  });
});

describe('boards and kerfs', () => {
  test('a 3/4 in MDF panel is 0.745 to 0.755 in on average (ANSI A208.2 as printed in Surface & Panel Buyers Guide 2015)', () => {
    expect(numberOf('3/4in - 0.125mm', 'in')).toBeCloseTo(0.745, 3);
    expect(numberOf('3/4in + 0.125mm', 'in')).toBeCloseTo(0.755, 3);
    expect(numberOf('2.0mm', 'in')).toBeCloseTo(0.08, 2);
  });

  test('sanded 18 mm birch is 17.1 to 18.7 mm (plyterra.com): nominal is not measured', () => {
    expect(numberOf('18mm - 0.9mm', 'mm')).toBeCloseTo(17.1, 12);
    expect(numberOf('18mm + 0.7mm', 'mm')).toBeCloseTo(18.7, 12);
  });

  test('18 mm is sold as 3/4 in and lies between 11/16 and 23/32 in (zozeen.com)', () => {
    expect(numberOf('ROUNDDOWNTO(18mm, 1/32in)', 'in')).toBeCloseTo(22 / 32, 12);
    expect(numberOf('ROUNDUPTO(18mm, 1/32in)', 'in')).toBeCloseTo(23 / 32, 12);
  });

  test('bends across the grain: 1/4 in plywood 2 ft, 3/8 in 3 ft (APA table, concreteconstruction.net)', () => {
    expect(numberOf('2ft', 'in')).toBeCloseTo(24, 12);
    expect(numberOf('3ft', 'in')).toBeCloseTo(36, 12);
  });

  test.each([
    ['1/8in', 3.175],
    ['3/32in', 2.38125],
  ])('a saw kerf of %s is %d mm (saw.coach, sawhubs.com)', (kerf, mm) => {
    expect(numberOf(kerf, 'mm')).toBeCloseTo(mm, 9);
  });

  test.each([
    ['2 1/8in', 54],
    ['1 1/4in', 32],
    ['1in', 25],
  ])('%s is sold as %d mm (engineerfix.com; mayerelectric.com)', (inches, mm) => {
    expect(numberOf(`ROUNDTO(${inches}, 1mm)`, 'mm')).toBeCloseTo(mm, 12);
  });

  test('a hole saw of 2 1/8 in read in millimetres is 54.0 mm (engineerfix.com prints 54)', () => {
    expect(shown('SHOW(2 1/8in, mm)')).toBe('54 mm');
  });
});

describe('sound', () => {
  test('0.25 m of path is 0.728 ms, 131° at 500 Hz (physics, 343.2 m/s)', () => {
    expect(numberOf('0.25m/(343.2m/1s)', 's') * 1000).toBeCloseTo(0.7284, 4);
    expect(numberOf('500Hz*(0.25m/(343.2m/1s))*360')).toBeCloseTo(131.1, 1);
  });

  test('a box of Qtc 1.0277 peaks at 1.411 dB (diysubwoofers.org: 20·log10(Qtc²/√(Qtc² − 1/4)))', () => {
    const squared = 'POWER(BOX.QTC(45l, 0.65, 30l), 2)';
    expect(numberOf(`20*LOG10(${squared}/SQRT(${squared} - 0.25))`)).toBeCloseTo(1.411, 3);
  });

  test.each([
    [85, 480],
    [88, 240],
    [91, 120],
    [94, 60],
    [97, 30],
    [100, 15],
  ])('%d dBA for %d min: 3 dB halve the time (NIOSH)', (level, minutes) => {
    expect(numberOf(`480min/POWER(2, (${literal(level)} - 85)/3)`, 'min')).toBeCloseTo(minutes, 9);
  });

  test.each([
    [90, 8],
    [95, 4],
    [100, 2],
  ])('%d dBA for %d h: 5 dB halve the time (OSHA rule)', (level, hours) => {
    expect(numberOf(`8h/POWER(2, (${literal(level)} - 90)/5)`, 'h')).toBeCloseTo(hours, 12);
  });
});

describe('money and time', () => {
  test('15,700 over 3 people and 160 h is 32.708; with 26.50 of unpaid time 59.208 (woodweb.com; printed 32.70 and 59)', () => {
    expect(numberOf('15700USD/(3*160h)', 'USD/h')).toBeCloseTo(32.708, 3);
    expect(numberOf('15700USD/(3*160h) + 26.50USD/h', 'USD/h')).toBeCloseTo(59.208, 3);
  });

  test('a salary of 60,000 costs 72,000: a burden of 1.20 (Fabric Architecture, February 2018)', () => {
    expect(numberOf('72000USD/60000USD')).toBeCloseTo(1.2, 12);
  });

  test('consumables of 8 to 10 % of 22 h at 85: 149.60 to 187.00 (share: ceoutlook.com, survey of 2013)', () => {
    expect(numberOf('8%*(22h*85USD/h)', 'USD')).toBeCloseTo(149.6, 9);
    expect(numberOf('10%*(22h*85USD/h)', 'USD')).toBeCloseTo(187, 9);
  });

  test('materials 207.00, labour 1,870.00, 8 % supplies, 10 % contingency, 30 % margin: 3,498.94, with 7.25 % tax 3,752.62 (worked)', () => {
    const labour = '22h*85USD/h';
    const before = `(180USD*1.15 + ${labour} + 8%*(${labour}))`;
    const price = `PRICE.FROMMARGIN(${before}*1.1, 30%)`;
    expect(numberOf(`${before}*1.1`, 'USD')).toBeCloseTo(2449.26, 2);
    expect(numberOf(price, 'USD')).toBeCloseTo(3498.94, 2);
    expect(numberOf(`${price}*1.0725`, 'USD')).toBeCloseTo(3752.62, 2);
    expect(numberOf(`${price}*1.0725*50%`, 'USD')).toBeCloseTo(1876.31, 2);
  });

  test('booking 6 h: 50 for the first two, 25 for each more: 150 (jacksontintandsound.com)', () => {
    expect(numberOf('50USD + MAX(0h, 6h - 2h)*25USD/h', 'USD')).toBeCloseTo(150, 12);
  });

  test.each([
    [10, 30, 3.333],
    [4, 12, 1.333],
  ])('estimates from %d to %d spread by %d (freepmptests.com, PERT)', (low, high, spread) => {
    const call = `(${literal(high)}min - ${literal(low)}min)/6`;
    expect(numberOf(call, 'min')).toBeCloseTo(spread, 3);
  });
});

describe('batches', () => {
  test('a gallon in pints is eight pots: a pint is the most for one person (Glen-L, mixing)', () => {
    expect(numberOf('MIX.BATCHES(1gal, 1pt)')).toBe(8);
  });

  test('a cup too many is one pot more (a pint is two cups of 237 ml: NIST Handbook 44, Appendix C)', () => {
    expect(numberOf('MIX.BATCHES(1gal + 237ml, 1pt)')).toBe(9);
  });
});

describe('soaked cloth', () => {
  test('2 mm of loft of 250 g/m² polyester holds 1.82 l/m², 2.0 kg/m² of 1.10 resin, 0.045 gal/sqft (worked; fibre 1.38 g/cm3 from memory)', () => {
    const room = '(2mm - 250g/m2/(1.38g/cm3))';
    expect(numberOf(`1m2*${room}`, 'l')).toBeCloseTo(1.82, 2);
    const uptake = `${room}*1.10g/cm3`;
    expect(numberOf(`RESIN.SOAK(1m2, ${uptake})`, 'kg')).toBeCloseTo(2, 2);
    const volume = `RESIN.VOLUME(RESIN.SOAK(1sqft, ${uptake}), 1.10g/cm3)`;
    expect(numberOf(volume, 'gal')).toBeCloseTo(0.045, 3);
  });

  test('that is 8 : 1 by weight, resin to cloth (worked)', () => {
    const soaked = baseOf('RESIN.SOAK(1m2, 2000g/m2)');
    expect(soaked / baseOf('1m2*250g/m2')).toBeCloseTo(8, 12);
  });

  test('two layers drink twice as much (definition)', () => {
    expect(numberOf('RESIN.SOAK(1m2, 2000g/m2, 2)', 'kg')).toBeCloseTo(4, 12);
  });
});
