/** Panels, the plane they lie in and what stands around them; part of a {@link SystemDesign}. */

/** Incidence angle modifier of a flat plate by one number: K = 1 − b0 (1/cos θ − 1). */
export interface IncidenceModifierB0 {
  /** b0 ≥ 0. [-] */
  readonly b0: number;
}

/** Incidence angle modifier as a table, linear between its rows and 0 at 90°. */
export interface IncidenceModifierTable {
  /** Incidence angles, rising from 0. [°] */
  readonly angles: readonly number[];
  /** Modifier at each angle; 1 at 0°. [-] */
  readonly values: readonly number[];
}

/** Incidence angle modifier of a cover by its matter: how much of the light that gets through at 0° still does aslant, τ(θ)/τ(0). */
export interface IncidenceModifierCover {
  /** Equal plates one over the other, 1 or 2. */
  readonly covers: number;
  /** n of the plate; some 1.526 for glass. [-] */
  readonly refractiveIndex: number;
  /** K, extinction coefficient: some 4 for clear white glass, 32 for greenish. [1/m] */
  readonly extinction: number;
  /** L, of one plate. [m] */
  readonly thickness: number;
}

/** Incidence angle modifiers of tubes: K = K_T(θT) K_L(θL), each table measured with the other angle 0. */
export interface IncidenceModifierBiaxial {
  /** By the angle across the tubes; values above 1 are common. */
  readonly transversal: IncidenceModifierTable;
  /** By the angle along the tubes. */
  readonly longitudinal: IncidenceModifierTable;
  /** How the tubes lie in the plane: up the slope, or level across it. */
  readonly tubes: 'upright' | 'level';
}

/** One collector by its test report (ISO 9806). */
export interface CollectorDesign {
  /** Name for reports. */
  readonly name: string;
  /** Area of one panel to which eta0, a1 and a2 refer: gross or aperture, as the test report says. [m²] */
  readonly area: number;
  /**
   * Zero-loss efficiency at normal incidence: that of the beam, η0,b, once defined. Where {@link eta0Basis} says that the report's
   * is η0,hem, `defineSystem` turns it into η0,b and says so. [-]
   */
  readonly eta0: number;
  /**
   * What the report's {@link eta0} is: `beam`, η0,b; `hemispherical`, η0,hem = η0,b (0.85 + 0.15 K_d), ISO 9806:2017. A design as
   * defined always holds `beam`.
   */
  readonly eta0Basis: 'beam';
  /** Linear heat loss coefficient. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic heat loss coefficient. [W/(m²·K²)] */
  readonly a2: number;
  /** Incidence angle modifier of the beam; that of diffuse light follows by integration. */
  readonly incidenceModifier:
    | IncidenceModifierB0
    | IncidenceModifierTable
    | IncidenceModifierCover
    | IncidenceModifierBiaxial;
  /** Effective heat capacity with fluid, a5 of ISO 9806. [J/(m²·K)] */
  readonly heatCapacity: number;
  /** Share of {@link heatCapacity} that is left when the fluid has boiled out. [-] */
  readonly dryCapacityShare: number;
  /** Growth of {@link a1} with wind, counted from 3 m/s. [J/(m³·K)] */
  readonly a3: number;
  /**
   * Share of the sky's long-wave deficit that the absorber takes, day and night. `null` for a glazed collector whose report has
   * none: then its rated losses hold the sky's share by day, and {@link skyCoefficient} stands for it at night. [-]
   */
  readonly a4: number | null;
  /** Fall of {@link eta0} with wind, counted from 3 m/s. [s/m] */
  readonly a6: number;
  /** Fall of {@link a4} with wind, counted from 3 m/s; only with a4. [s/m] */
  readonly a7: number;
  /** Loss with the fourth power of the difference from the air. A run does not count it: 0, or left out. [W/(m²·K⁴)] */
  readonly a8?: 0;
  /**
   * Stagnation temperature that the report states, at 1000 W/m² and 30 °C. The run goes by the coefficients, which may fall 30 K short of it; cautions
   * go by this one. Left out: not stated. [°C]
   */
  readonly stagnationTemperature?: number | undefined;
  /** Whether a cover lies over the absorber. */
  readonly glazed: boolean;
  /** Share of the sky's long-wave deficit that cools the absorber at night; equals {@link a4} where that is given. [-] */
  readonly skyCoefficient: number;
  /** Liquid in one panel. [m³] */
  readonly fluidContent: number;
  /** Pressure drop of one panel with water at 20 °C and {@link ratedFlow}. [Pa] */
  readonly ratedPressureDrop: number;
  /** Flow through one panel at which {@link ratedPressureDrop} was measured. [m³/s] */
  readonly ratedFlow: number;
}

/** One point of the horizon as seen from the roof. */
export interface HorizonPoint {
  /** Clockwise from north, 0 to below 360. [°] */
  readonly azimuth: number;
  /** Above the level, 0 to 90. [°] */
  readonly altitude: number;
}

/** An upright rectangle before the array: the next row, a chimney, a wall. */
export interface ObstacleDesign {
  /** From the middle of the array's lower edge to its middle, level. [m] */
  readonly distance: number;
  /** Across the line of sight. [m] */
  readonly width: number;
  /** Of its top above the array's lower edge; it hides all below. [m] */
  readonly height: number;
  /** Direction in which it is seen from the array, clockwise from north. [°] */
  readonly azimuth: number;
}

/** Size of an array. */
export interface ArrayExtent {
  /** From side to side. [m] */
  readonly width: number;
  /** From its lower to its upper edge, along the slope. [m] */
  readonly slopeLength: number;
}

/** Further collectors on the same loop: of another kind, on another plane, or elsewhere along the flow than the array itself. */
export interface CollectorGroupDesign extends ArrayExtent {
  /** Name for reports. */
  readonly name: string;
  /** Number of panels. */
  readonly panels: number;
  /** Panels that the fluid passes one after the other, in equal rows side by side. */
  readonly inSeries: number;
  /**
   * Place along the flow, 1 to 10: groups of one stage lie side by side (parallel) and share the flow by their resistances, the fluid of one stage mixes
   * before the next. The array itself is in stage 1.
   */
  readonly stage: number;
  /** From the horizontal, 0 to 90. [°] */
  readonly tilt: number;
  /** Clockwise from north: 90 east, 180 south, 270 west. [°] */
  readonly azimuth: number;
  /** Something near before this group; `null` for nothing. */
  readonly obstacle: ObstacleDesign | null;
  /** Share of the light that gets to the panels: less than 1 under a tree, or behind glass gone blind. [-] */
  readonly lightShare: number;
  /** One panel. */
  readonly collector: CollectorDesign;
}

/** Days on which something lies over the collectors, such as a sheet in the holidays. */
export interface ArrayCoverDesign {
  /** First and last day, `'07-10..07-24'`; may pass the turn of the year. */
  readonly days: string;
  /** Share of the light that still gets to the panels: 0 under a sheet, some 0.3 under shade cloth. [-] */
  readonly lightShare: number;
}

/** Another tilt for a part of the year. */
export interface SummerTiltDesign {
  /** From the horizontal, 0 to 90. [°] */
  readonly tilt: number;
  /** First and last day with it, `'04-01..09-30'`; may pass the turn of the year. */
  readonly days: string;
  /** Whether the PV module is on the same frame and turns with it. */
  readonly withModule: boolean;
}

/** Panels and where they look. */
export interface ArrayDesign extends ArrayExtent {
  /** Number of panels. */
  readonly panels: number;
  /** Panels that the fluid passes one after the other; equal rows of so many lie side by side in the flow (parallel). */
  readonly inSeries: number;
  /** From the horizontal, 0 to 90. [°] */
  readonly tilt: number;
  /** Clockwise from north: 90 east, 180 south, 270 west. [°] */
  readonly azimuth: number;
  /** Sky model: how diffuse light is spread over the sky. `haydavies` is read as `hay-davies`. */
  readonly skyModel: 'perez' | 'hay-davies' | 'isotropic';
  /** Diffuse reflectance of the ground where the weather has no column of its own, one value or twelve from January. [-] */
  readonly groundAlbedo: number | readonly number[];
  /** Whose reflectance of the ground counts where the weather has a column of its own. */
  readonly albedoFrom: 'weather' | 'design';
  /** Reflectance of snow on the ground where the weather has its depth; `null` leaves it out. [-] */
  readonly snowAlbedo: number | null;
  /** What lies on the collectors after a snowfall, where the weather has the depth: nothing, or snow as on plates or on tubes. */
  readonly snowOnPanels: 'ignored' | 'plate' | 'tubes';
  /** Horizon around collectors and module, points of rising azimuth; `null` for a flat one. */
  readonly horizon: readonly HorizonPoint[] | null;
  /** Something near before the collectors (not the module); `null` for nothing. */
  readonly obstacle: ObstacleDesign | null;
  /** Wind along the collectors over that at 10 m above open ground; a station's lower or higher wind is first brought to 10 m. [-] */
  readonly windFactor: number;
  /** One panel. */
  readonly collector: CollectorDesign;
  /** Tilt of the array itself in summer, where its frame is set by hand twice a year; `null`: one tilt all year. */
  readonly summerTilt: SummerTiltDesign | null;
  /** What lies over all collectors, and when; the PV module is not covered. */
  readonly covers: readonly ArrayCoverDesign[];
  /** Further groups on the loop; none where all collectors are of one kind on one plane. Horizon, ground, snow and sky are the array's. */
  readonly groups: readonly CollectorGroupDesign[];
}
