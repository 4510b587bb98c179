/** Expansion vessel: the gas law, and the vessel that a loop needs. Pressures are gauge, `air` is the air's own. */

/** Air pressure in EN 12828's formula, which takes 1 bar for it (from memory). [Pa] */
export const EN_12828_AIR = 1e5;

/** Vessels as they are sold, common practice, no source. [m³] */
export const VESSELS_SOLD = [0.008, 0.012, 0.018, 0.024, 0.035, 0.05, 0.08, 0.1, 0.14, 0.2, 0.3, 0.5] as const;

/** Vessels up to this volume keep a share of it as reserve: EN 12828, from memory. [m³] */
export const SMALL_VESSEL = 0.015;
/** That share. [-] */
export const SMALL_RESERVE = 0.2;

/** Liquid in a vessel, w = V_N [1 − (p_pre + p_air)/(p + p_air)]; negative below the pre-charge. [m³] */
export const vesselContent = (volume: number, precharge: number, gauge: number, air: number): number =>
  volume * (1 - (precharge + air) / (gauge + air));

/** Pressure of a vessel with liquid w < V_N in it, p = V_N (p_pre + p_air)/(V_N − w) − p_air: gas law, isothermal. [Pa] */
export const gaugeOfVessel = (volume: number, precharge: number, stored: number, air: number): number =>
  (volume * (precharge + air)) / (volume - stored) - air;

/** Liquid that a larger vessel keeps in reserve: 0.5 % of the system, at least 3 L (EN 12828, from memory). [m³] */
export const largeReserve = (systemVolume: number): number => Math.max(0.005 * systemVolume, 0.003);

/** Liquid that a vessel holds when the loop is filled cold: EN 12828's reserve of the vessel installed (from memory). [m³] */
export const reserveIn = (volume: number, systemVolume: number): number =>
  volume <= SMALL_VESSEL ? SMALL_RESERVE * volume : largeReserve(systemVolume);

/**
 * Pre-charge with which a vessel holds its reserve at the fill pressure: p_pre = (p_fill + p_air)(1 − V_r/V_N) − p_air, at
 * least 0. [Pa]
 */
export const prechargeFor = (volume: number, fillPressure: number, systemVolume: number, air: number): number =>
  Math.max(0, (fillPressure + air) * (1 - reserveIn(volume, systemVolume) / volume) - air);

/**
 * Gas that a vessel must hold in the cold loop, so that what is moved in brings it to the end pressure and no further:
 * V_gas = V_moved (p_end + p_air)/(p_end − p_cold). [m³]
 */
export const gasNeeded = (moved: number, coldPressure: number, endPressure: number, air: number): number =>
  (moved * (endPressure + air)) / (endPressure - coldPressure);

/** Smallest vessel with that gas beside its reserve. [m³] */
export function smallestVessel(gas: number, systemVolume: number): number {
  const small = gas / (1 - SMALL_RESERVE);
  return small <= SMALL_VESSEL ? small : Math.max(SMALL_VESSEL, gas + largeReserve(systemVolume));
}

/** Next vessel that is sold, or as many of the largest as it takes. [m³] */
export function vesselSold(volume: number): number {
  const largest = VESSELS_SOLD[VESSELS_SOLD.length - 1]!;
  const enough = volume * (1 - 1e-9);
  return VESSELS_SOLD.find((size) => size >= enough) ?? Math.ceil(enough / largest) * largest;
}
