/** What can hurt someone about a loop under pressure. */
import { show } from '../../input/working.ts';
import type { SteamReach } from '../../physics/loop/vessel-need.ts';

/** Cautions of a sized loop; the first where its steam gets to pump and vessel. */
export function pressureCautions(steam: SteamReach): string[] {
  return [
    ...(steam.powerLeft > 0
      ? [
          `Steam may get through all the pipe to pump and vessel with ${show(steam.powerLeft, 2)} W: a vessel without membrane before the expansion vessel cools it. More pipe, or panels that empty from below (loop.steamPower 50 W/m²), keep it off.`,
        ]
      : []),
    'Nothing that shuts may stand between collectors and relief valve; pipe its outlet to a catch vessel, never to a roof edge or a drain.',
    'Steam and hot glycol scald: fill and vent with the collectors cold or covered.',
    'The vessel must bear the relief pressure, its membrane glycol and heat; a length of bare pipe before it keeps steam from it. Pressure vessels: your local code and licensed trades decide.',
  ];
}
