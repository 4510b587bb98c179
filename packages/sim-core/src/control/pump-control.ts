import type { ControlDesign, PumpDesign } from '../system/design.ts';

/** Who starts and stops the pump: the power that its module gives, and the tank's high limit. */
export interface PumpControl {
  /** Whether the pump turned in the last step. */
  running: boolean;
  /** Whether the high limit holds the pump off. */
  limited: boolean;
  readonly startPower: number;
  readonly stopPower: number;
  readonly limit: number;
  readonly release: number;
}

/** Prepares the control, pump standing. */
export const compilePumpControl = (pump: PumpDesign, control: ControlDesign): PumpControl => ({
  running: false,
  limited: false,
  startPower: pump.startPower,
  stopPower: pump.stopPower,
  limit: control.highLimit ?? Number.POSITIVE_INFINITY,
  release: (control.highLimit ?? Number.POSITIVE_INFINITY) - control.highLimitHysteresis,
});

/**
 * Decides for one step whether the pump turns. A standing rotor needs more power than a turning one, so start and stop have
 * their own thresholds; so has the high limit.
 *
 * @param power - Electrical power at the pump. [W]
 * @param tankTop - Top node of the tank. [°C]
 */
export function decidePump(control: PumpControl, power: number, tankTop: number): boolean {
  if (tankTop >= control.limit) control.limited = true;
  else if (tankTop <= control.release) control.limited = false;
  const enough = power > 0 && power >= (control.running ? control.stopPower : control.startPower);
  control.running = enough && !control.limited;
  return control.running;
}
