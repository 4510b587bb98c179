/**
 * What the words of a survey stand for. Numbers are handbook values from memory where a source is named, else judgement; each has
 * the limits that it stays within in about nine cases of ten.
 */
import type { Band } from './band.ts';

const band = (low: number, likely: number, high: number): Band => ({ low, likely, high });

/** Kind of cover. */
export type CoverKind = 'low-iron-glass' | 'window-glass' | 'glass-fibre' | 'polycarbonate' | 'unknown';

interface CoverMaterial {
  readonly refractiveIndex: number;
  /** Of one cover. [1/m] */
  readonly extinction: Band;
  readonly thickness: number;
  /** [kg/m³] */
  readonly density: number;
}

/** Glass: index 1.526, extinction 4 (white edge) to 32 1/m (green edge), Duffie & Beckman §5.2; plastics: judgement. */
export const COVERS: Readonly<Record<CoverKind, CoverMaterial>> = {
  'low-iron-glass': { refractiveIndex: 1.526, extinction: band(3, 6, 10), thickness: 0.004, density: 2500 },
  'window-glass': { refractiveIndex: 1.526, extinction: band(12, 22, 32), thickness: 0.004, density: 2500 },
  'glass-fibre': { refractiveIndex: 1.54, extinction: band(50, 90, 180), thickness: 0.001, density: 1400 },
  polycarbonate: { refractiveIndex: 1.586, extinction: band(15, 30, 60), thickness: 0.004, density: 1200 },
  unknown: { refractiveIndex: 1.526, extinction: band(4, 12, 32), thickness: 0.004, density: 2500 },
};

/** Metal of plate or tubes. */
export type PanelMetal = 'copper' | 'aluminium' | 'steel' | 'stainless-steel' | 'unknown';

interface MetalProperties {
  /** [W/(m·K)] */
  readonly conductivity: Band;
  /** [kg/m³] */
  readonly density: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
}

/** Handbook values; an unknown plate is taken as aluminium, which may be copper or steel. */
export const METALS: Readonly<Record<PanelMetal, MetalProperties>> = {
  copper: { conductivity: band(340, 380, 395), density: 8930, specificHeat: 385 },
  aluminium: { conductivity: band(190, 210, 230), density: 2700, specificHeat: 900 },
  steel: { conductivity: band(43, 50, 55), density: 7850, specificHeat: 470 },
  'stainless-steel': { conductivity: band(14, 15, 17), density: 7900, specificHeat: 500 },
  unknown: { conductivity: band(50, 210, 385), density: 4500, specificHeat: 600 },
};

/** How the tubes are held on the plate. */
export type PlateBond = 'one-piece' | 'soldered' | 'welded' | 'clamped' | 'unknown';

/**
 * 1/C_b [m·K/W]. Good bonds pass more than 30 W/(m·K), wired or clamped ones 3 to 15 (Whillier & Saluja 1965, Duffie & Beckman
 * §6.5, from memory).
 */
export const BONDS: Readonly<Record<PlateBond, Band>> = {
  'one-piece': band(0, 0, 0.002),
  soldered: band(0.001, 0.005, 0.03),
  welded: band(0.002, 0.01, 0.04),
  clamped: band(0.06, 0.15, 0.35),
  unknown: band(0.001, 0.02, 0.25),
};

/** Surface of the plate. */
export type PlateCoating = 'black-paint' | 'selective' | 'selective-paint' | 'unknown';

interface Surface {
  readonly absorptance: Band;
  readonly emittance: Band;
}

/** As they were when new; ageing is in the condition. Handbook ranges, from memory (Duffie & Beckman §4.8). */
export const COATINGS: Readonly<Record<PlateCoating, Surface>> = {
  'black-paint': { absorptance: band(0.92, 0.95, 0.97), emittance: band(0.87, 0.92, 0.96) },
  selective: { absorptance: band(0.91, 0.94, 0.96), emittance: band(0.05, 0.1, 0.2) },
  'selective-paint': { absorptance: band(0.89, 0.92, 0.94), emittance: band(0.25, 0.4, 0.6) },
  unknown: { absorptance: band(0.9, 0.94, 0.96), emittance: band(0.08, 0.5, 0.94) },
};

/** What lies behind the plate. */
export type PanelInsulation = 'mineral-wool' | 'foam' | 'unknown';

interface InsulationMaterial {
  /** Dry, at working temperature. [W/(m·K)] */
  readonly conductivity: Band;
  /** [kg/m³] */
  readonly density: number;
}

/** Handbook values at 60 to 80 °C, from memory. Specific heat 840 J/(kg·K) for all. */
export const INSULATIONS: Readonly<Record<PanelInsulation, InsulationMaterial>> = {
  'mineral-wool': { conductivity: band(0.038, 0.043, 0.05), density: 50 },
  foam: { conductivity: band(0.025, 0.03, 0.038), density: 35 },
  unknown: { conductivity: band(0.026, 0.042, 0.06), density: 45 },
};

/** State of a panel as the eye sees it. */
export type PanelCondition = 'good' | 'worn' | 'poor' | 'unknown';

interface Ageing {
  /** Factor on (τα): dirt, film inside the cover, faded plate. */
  readonly light: Band;
  /** Factor on the insulation's conductivity: settled or damp. */
  readonly insulation: Band;
}

/**
 * Judgement, no source. Good: clear, dry, even colour. Worn: film or chalky spots. Poor: streaks of water, bare or peeling
 * plate.
 */
export const CONDITIONS: Readonly<Record<PanelCondition, Ageing>> = {
  good: { light: band(0.95, 0.98, 1), insulation: band(1, 1.05, 1.2) },
  worn: { light: band(0.88, 0.94, 0.98), insulation: band(1.05, 1.2, 1.6) },
  poor: { light: band(0.7, 0.84, 0.92), insulation: band(1.2, 1.8, 4) },
  unknown: { light: band(0.82, 0.93, 0.99), insulation: band(1, 1.2, 2) },
};

/** How the tubes run: side by side between two headers, or one tube to and fro. */
export type TubeLayout = 'harp' | 'serpentine';
