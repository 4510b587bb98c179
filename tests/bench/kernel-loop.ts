/** The loop of the small year that the bench measures by. */
import { type Kernel, PARTS, WIDTH } from './kernel-state.ts';

/** Fluid goes round: films, parts of the ring, and what they gave. */
export function circulate(kernel: Kernel, hour: number, light: number, duration: number): void {
  const { columns, ring, stream, tank } = kernel;
  stream.flow = (0.3 + 0.7 * Math.min(light / 800, 1)) * 0.08;
  stream.rate = stream.flow * interpolated(kernel.table, ring[3]!, 0) * 700;
  films(kernel, ring[10 * WIDTH + 3]!, tank.temperature[5]!);
  const lost = setParts(kernel, light, kernel.air[hour]!, duration);
  sweep(ring, kernel.along);
  spread(ring, kernel.along);
  let given = 0;
  for (let part = 10; part < PARTS - 1; part++) {
    const at = part * WIDTH;
    const risen = 0.02 * (ring[at + 5]! - ring[at + WIDTH + 5]!);
    tank.rise[part - 9] = risen;
    given += risen;
  }
  for (let at = 0; at < PARTS * WIDTH; at += WIDTH) ring[at + 3]! += ring[at + 6]!;
  columns[9]![hour]! += stream.rate * (ring[8 * WIDTH + 5]! - ring[5]!) * duration;
  columns[10]![hour]! += given;
  columns[11]![hour]! += stream.flow;
  columns[12]![hour]! += lost * duration;
  columns[13]![hour]! += 1;
}

/** A number of a table between two rows. */
function interpolated(table: Float64Array, temperature: number, column: number): number {
  const y = Math.min(Math.max((temperature + 20) * 1.6, 0), 255);
  const row = y | 0;
  const at = 3 * row + column;
  return table[at]! + (table[at + 3]! - table[at]!) * (y - row);
}

function films({ stream, table }: Kernel, fluid: number, water: number): void {
  const reynolds = 40 + 6000 * stream.flow * interpolated(table, fluid, 1);
  const inside = 80 + 9 * Math.exp(0.6 * Math.log(reynolds)) * interpolated(table, fluid, 2);
  const difference = fluid - water;
  let share = stream.surface;
  for (let pass = 0; pass < 4; pass++) {
    const rise = 1.2 * Math.cbrt(Math.sqrt(Math.abs(difference) * share));
    const film = interpolated(table, water + 0.5 * share * difference, 0) * (0.6 + rise) * (0.6 + rise) * 90;
    const move = (inside * (1 - share) - film * share) / (inside + film * (1 + rise / (3 * (0.6 + rise))));
    share = Math.min(Math.max(share + move, 0.01), 0.99);
    if (Math.abs(move) < 0.01) break;
  }
  stream.surface = share;
  stream.conductance = inside * (1 - share);
}

/** Sets the parts up: array, pipes, and the coil with the water around it. */
function setParts({ ring, stream, tank }: Kernel, light: number, air: number, duration: number): number {
  let lost = 0;
  let pace = 0;
  for (let part = 0; part < PARTS; part++) {
    const at = part * WIDTH;
    const isCoil = part >= 10 && part < PARTS - 1;
    const here = isCoil ? tank.temperature[part - 9]! : ring[at + 3]!;
    const loss = isCoil ? 0 : part < 8 ? 2 + 0.006 * Math.abs(here - air) : 0.8;
    const total = stream.rate + loss;
    if (part < 2 || (part > 7 && part < 12) || part === PARTS - 1) {
      pace = isCoil ? 0.4 * -Math.expm1(-stream.conductance / (8 * total)) : (total * duration) / (9000 + 900 * part);
      setPace(ring, at, pace);
    } else for (let place = 0; place < 3; place++) ring[at + place] = ring[at - WIDTH + place]!;
    ring[at + 3] = here;
    ring[at + 4] = isCoil ? 1 : stream.rate / total;
    ring[at + 7] = isCoil ? 0 : (loss * air + (part < 8 ? 0.4 * light : 0)) / total;
    ring[at + 8] = isCoil ? 0.3 : 1;
    lost += loss * (here - air);
  }
  return lost;
}

/** How fast a part follows what drives it. */
function setPace(ring: Float64Array, at: number, x: number): void {
  const gone = x > 0.01 ? 1 - Math.exp(-x) : x * (1 - 0.5 * x);
  const held = x > 0.01 ? gone / x : 1 - 0.5 * x;
  ring[at] = gone;
  ring[at + 1] = held;
  ring[at + 2] = 0.5 * held - (x > 0.01 ? (1 - held) / x : 0.5);
}

/** What comes behind the parts, by mean and trend of what goes in; and closes the ring. */
function sweep(ring: Float64Array, along: Float64Array): void {
  let mm = 1;
  let mk = 0;
  let m0 = 0;
  let km = 0;
  let kk = 1;
  let k0 = 0;
  for (let at = 0; at < PARTS * WIDTH; at += WIDTH) {
    const gone = ring[at]!;
    const settled = 1 - ring[at + 1]!;
    const own = ring[at + 8]!;
    const driven = own * ring[at + 4]!;
    const turning = 2 * (gone - settled);
    const byMean = 1 - own + driven * settled;
    const byTrend = driven * ring[at + 2]!;
    const trendByMean = driven * turning;
    const trendByTrend = 1 - own + driven * (2 * settled - gone - 2 * ring[at + 2]!);
    const mean = own * (settled * ring[at + 7]! + ring[at + 1]! * ring[at + 3]!);
    const trend = own * turning * (ring[at + 7]! - ring[at + 3]!);
    ring[at + 9] = byMean;
    ring[at + 10] = byTrend;
    ring[at + 11] = mean;
    ring[at + 12] = trendByMean;
    ring[at + 13] = trendByTrend;
    ring[at + 14] = trend;
    const [a, b, c] = [mm, mk, m0];
    mm = byMean * a + byTrend * km;
    mk = byMean * b + byTrend * kk;
    m0 = byMean * c + byTrend * k0 + mean;
    km = trendByMean * a + trendByTrend * km;
    kk = trendByMean * b + trendByTrend * kk;
    k0 = trendByMean * c + trendByTrend * k0 + trend;
  }
  const determinant = (1 - mm) * (1 - kk) - mk * km;
  along[0] = (m0 * (1 - kk) + mk * k0) / determinant;
  along[1] = (k0 * (1 - mm) + km * m0) / determinant;
}

function spread(ring: Float64Array, along: Float64Array): void {
  let m = along[0]!;
  let k = along[1]!;
  for (let at = 0; at < PARTS * WIDTH; at += WIDTH) {
    ring[at + 5] = m;
    ring[at + 6] = ring[at]! * (ring[at + 4]! * m + ring[at + 7]! - ring[at + 3]!);
    const mean = ring[at + 9]! * m + ring[at + 10]! * k + ring[at + 11]!;
    k = ring[at + 12]! * m + ring[at + 13]! * k + ring[at + 14]!;
    m = mean;
  }
  ring[PARTS * WIDTH + 5] = m;
}

/** Nothing moves: each part goes its own way. */
export function stand({ air, columns, ring }: Kernel, hour: number, light: number, duration: number): void {
  let lost = 0;
  for (let part = 0; part < PARTS; part++) {
    const at = part * WIDTH;
    const target = air[hour]! + (part < 8 ? 0.1 * light : 0);
    const fall = (ring[at + 3]! - target) * (duration / (duration + 2000));
    ring[at + 3]! -= fall;
    lost += fall;
  }
  columns[12]![hour]! += lost;
}
