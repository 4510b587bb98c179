/** Sentences of the cautions about the water that people touch and breathe, and about the tank. */
import type { CautionText } from './caution-text.ts';
import { WHO } from './who.ts';

export const WATER_WORDS = {
  scald: {
    severity: ['danger'],
    raised: 'while water runs, the taps can be hotter than 49 °C (120 °F)',
    short: 'water at the taps can reach {peak}',
    says: {
      found: 'Water at the taps can reach {peak} ({when}); in {hours} of use it can be above {limit}.',
      burns: 'Water that hot burns an adult’s skin {burns}, that of children and the elderly sooner.',
      none: 'There is no mixing valve: have one fitted after the heater that is listed for it (ASSE 1017, EN 1111), and set so that no tap gets above {limit} where people wash.',
      lower:
        'The mixing valve is set to {setting} and may let {accuracy} more through: set it to {safe} or lower where people wash.',
      rise: 'It holds its setting of {setting} only where the hot water is {difference} hotter, from {needed} on; between the two the taps may run as hot as the water comes. Set it to {safe} or lower where people wash, or keep the hot water always above {needed}.',
      measure: 'Measure at the taps after each turn.',
    },
    who: 'You may turn a valve and measure; fitting one is a plumber’s.',
    source:
      'Limit: US Consumer Product Safety Commission, document 5098, which asks for {limit}; burn times: the same, and Moritz & Henriques 1947, read in secondary pages',
  },
  'heater-setting': {
    severity: ['danger', 'warning'],
    raised: 'the heater’s thermostat is below 60 °C (140 °F); a danger below 45 °C (113 °F)',
    short: 'the heater is set to {setting}, too cool to kill legionella',
    says: {
      found: 'The heater is set to {setting}.',
      why: 'Water kept below {disinfection} does not reliably kill legionella; from {low} to {high} they multiply.',
      fitFirst:
        'Without a mixing valve leave it at {tap} or below, as a higher setting scalds. First have a valve fitted after the heater (ASSE 1017, EN 1111); only then raise the setting to {disinfection}.',
      raise:
        'The mixing valve after it keeps the taps cooler: test that it does, then raise the setting to {disinfection}, or do what the local code says.',
    },
    who: 'You may turn a thermostat; fitting a valve is a plumber’s.',
    source:
      'HSE HSG274 part 2, read in secondary pages; above {tap} a mixing valve first: US Consumer Product Safety Commission, document 5098',
  },
  'lukewarm-tank': {
    severity: ['warning'],
    raised: 'the mean of a solar tank is between 20 and 45 °C (68 and 113 °F) in any hour',
    short: 'the solar tank is lukewarm in {hours}',
    says: {
      found: 'The mean of the solar tank is between {low} and {high}, where legionella multiply, in {hours}.',
      either:
        'The mean of one of the two solar tanks, which hold {stored}, is between {low} and {high}, where legionella multiply, in {hours}; what stands in the second passes the first on its way.',
      element:
        'Solar heat alone is no disinfection, and the element heats only what stands above it: bring the whole tank to {disinfection} as often as the local code says.',
      stored:
        'That is usual for a tank that preheats, and solar heat alone is no disinfection: the heater after it must keep all drawn water at {disinfection}, or do what the local code says.',
      unfired:
        '{unfired} of {whole} of hot water a year pass the flow-through heater without being heated at all; {cool} leave it below {disinfection}.',
      flowThrough:
        'A heater that warms water as it flows disinfects nothing in those seconds: at {disinfection} it takes {killing} to kill nine tenths. Have the tank itself brought to {disinfection} as often as the local code says.',
    },
    who: WHO.ownerOrPlumber,
    source: 'HSE ACoP L8 and HSG274 part 2; laboratory times at {disinfection}; read in secondary pages',
  },
  'cool-water': {
    severity: ['warning'],
    raised:
      'a tenth of the hot water or more leaves a store or element that is set to 60 °C (140 °F) or above more than 1 K (2 °F) below 60 °C',
    short: '{volume} of water a year leave the heater too cool to count as disinfected',
    says: {
      found: '{volume} of {whole} of hot water leave the heater below {disinfection} in the year.',
      why: 'Water from a lukewarm tank may carry legionella, and what passes the heater cool is not disinfected.',
      act: 'A stronger heater, a larger store or a smaller flow at the taps keeps it hot; else have the solar tank brought to {disinfection} as often as the local code says.',
    },
    who: WHO.plumber,
    source: 'HSE HSG274 part 2, read in secondary pages; a tenth: judgement',
  },
  'heater-off': {
    severity: ['warning'],
    raised: 'water is drawn while season or timer (`heater.offDays`, `heater.heatingHours`) keep the heater off',
    short: 'water is drawn in {hours} while the heater is off',
    says: {
      found:
        'In {hours} water is drawn while the heater is off: {hot}, of which {cool} leave it below {disinfection}; the taps lack {missing}.',
      why: 'Sun alone is no disinfection: in dull days the water stays where legionella multiply, and nothing after the tank kills them.',
      season:
        'Before you switch it off, ask what the local code wants; a house with old, ill or many people should keep it on. Before you use the water again after it stood lukewarm, bring store and pipes to {disinfection}, and do not breathe the spray of the first water.',
      timer:
        'Set the hours so that the store is at {disinfection} once a day at least, or as often as the local code says.',
    },
    who: WHO.ownerOrPlumber,
    source: 'HSE ACoP L8 and HSG274 part 2, read in secondary pages',
  },
  'ring-lukewarm': {
    severity: ['warning'],
    raised:
      'water comes back from the recirculation ring below 50 °C (122 °F) when the heater is at its setting, or the ring rests for hours',
    short: 'water in the recirculation ring can be lukewarm',
    says: {
      cool: 'At {supply} from the heater water comes back from the {length} ring at {returned}, below {limit}: somewhere in it legionella may grow.',
      rests: 'The ring rests for hours a day; its water cools towards {surroundings} and stands.',
      act: 'More insulation, more flow or a hotter heater brings the return to {limit}; whether the ring may rest, and how long, the local code says. Hotter water needs a mixing valve at the taps.',
    },
    who: WHO.plumber,
    source: 'HSE HSG274 part 2: {limit} at the return, read in secondary pages',
  },
  'long-pipe': {
    severity: ['warning'],
    raised: 'more than 3 L (0.8 gal) of water stand in the pipe between heater and taps (`draw.hotPipe`)',
    short: '{content} of water stand in the pipe to the taps',
    says: {
      found: 'In the {length} of pipe to the taps {content} of water stand and cool between draws, more than {limit}.',
      act: 'Standing lukewarm water grows legionella: a thinner or shorter pipe, or a ring that keeps it hot, is better. Let the first water run off after days away, and do not breathe its spray; the local code may ask for more.',
    },
    who: WHO.ownerOrPlumber,
    source: 'DVGW worksheet W 551: at most {limit} without circulation (from memory)',
  },
  shortfall: {
    severity: ['note'],
    raised: 'the taps miss 0.1 % or more of the heat that they ask for in the year',
    short: 'the taps run cooler than asked for in {hours}',
    says: {
      found: 'The taps get less heat than asked for in {hours}: {missing} in the year, {share}.',
      larger: 'A larger heater or burner helps.',
      least:
        'Most of it passes a heater that does not fire: what helps is one with a lower least power and flow, made for preheated water. A larger one would make it worse.',
      element: 'A stronger element, or one lower in the tank, helps.',
    },
    who: WHO.planner,
    source: 'An hour counts when more than 1 % of the heat asked for is missing (judgement)',
  },
  'hot-inlet': {
    severity: ['warning'],
    raised: 'water above 60 °C (140 °F) runs from the solar tank into a heater behind it',
    short: 'water of up to {peak} runs into the heater behind',
    says: {
      found:
        'In {hours} of use water above {limit} runs from the solar tank into pipe and heater behind it, up to {peak}.',
      act: 'Read in the papers of heater and mixing valve which inlet they permit, and have a valve fitted before the heater where that is less. Plastic pipe bears {plastic} at most, and less under pressure: metal pipe belongs to the tank.',
    },
    who: WHO.plumber,
    source: 'Permitted inlets: makers’ papers; plastic pipe: rated for {plastic} by ASTM F876 (from memory)',
  },
  relief: {
    severity: ['danger'],
    raised: 'the tank’s relief valve lets water out',
    short: 'the tank’s relief valve opens in {hours}',
    says: {
      found: 'The tank’s relief valve opens in {hours} and lets out {volume} of water at {temperature}.',
      act: 'A relief valve is a last guard, not an everyday limit: set a high limit below it, or fit less collector or a larger tank.',
      pipe: 'Its discharge pipe must run full size, downhill, with no valve in it, to a safe place in sight.',
    },
    who: WHO.plumber,
    source: 'ANSI Z21.22, read in Washington State code WAC 296-150V-1580',
  },
  'hot-tank': {
    severity: ['danger'],
    raised: 'the hottest part of the tank is above 93.3 °C (200 °F)',
    short: 'the tank reaches {peak}',
    says: {
      found:
        'The hottest part of the tank is above {limit} in {hours} and reaches {peak} ({when}): near boiling, and where relief valves open under some codes.',
      act: 'Set the high limit well below it, or have one fitted.',
    },
    who: WHO.loop,
    source: 'Chicago municipal code, read in a public copy: relief valves open at {limit}',
  },
  'tank-rating': {
    severity: ['warning'],
    raised: 'the hottest part of the tank is above its rating (`tank.ratedTemperature`)',
    short: 'the tank is above its rating in {hours}',
    says: {
      found: 'The hottest part of the tank is above its rated {limit} in {hours} and reaches {peak}.',
      act: 'Linings, anodes and seals age fast there. Lower the high limit, or choose a tank rated for more. Follow the maker’s papers.',
    },
    who: WHO.loop,
    source: 'Rating given in the design',
  },
  'tank-ice': {
    severity: ['danger'],
    raised: 'water in the tank falls to 0 °C (32 °F)',
    short: 'water in the tank freezes',
    says: {
      found: 'Water at the bottom of the tank falls to {coldest} ({when}); the calculation knows no ice.',
      act: 'A tank that freezes bursts: put it in a warmer room, insulate it, or drain it in winter.',
    },
    who: WHO.plumber,
    source: 'Water swells by 9 % as it freezes (handbook)',
  },
  'tank-swell': {
    severity: ['note'],
    raised: 'always: the water of the tank swells as it warms',
    short: 'the tank’s water swells by {swell}',
    says: {
      found: 'The {volume} of the tank swell by {swell} between {cold} and {hot}.',
      act: 'Where a check valve, pressure reducer or backflow preventer closes the cold pipe, it has nowhere to go, and the relief valve drips or a pipe bursts: have an expansion vessel for drinking water fitted that takes it.',
    },
    who: WHO.plumber,
    source: 'IPC 607.3, UPC 608.3 (from memory); density of water',
  },
  'mains-elsewhere': {
    severity: ['note'],
    raised:
      'cold water by the correlation of the United States (`draw.mains` left out) at a place outside their contiguous states',
    short: 'the cold water follows a correlation of another country',
    says: {
      found: 'The cold water is computed by a correlation of the United States: {coldest} to {warmest} in this year.',
      why: 'At a London tap it is up to {winter} too warm in winter and {summer} too cold in summer; colder water takes more heat, and more of the sun’s.',
      act: 'Give draw.mains: twelve monthly values of the supplier or of a thermometer at the tap, or mean and swing of the year, such as mean: 12, swing: 12. Where rivers feed the network the swing is that of the outdoor air, about its warmest month less its coldest.',
    },
    who: WHO.planner,
    source:
      'Burch & Christensen 2007, fitted to the contiguous United States; a tap in London, 22 readings (Earth Notes): docs/theory/measured.md',
  },
  hydrogen: {
    severity: ['warning', 'note'],
    raised: 'always; a caution where no water is drawn for two weeks or more',
    short: 'hydrogen can gather in a tank that is not used',
    says: {
      found: 'No hot water is drawn for {days} on end.',
      act: 'In a tank with an anode hydrogen gathers when no water is drawn for two weeks or more, and it burns. After such a time open a hot tap at the sink until no gas hisses, with no flame near and no switch touched, before anything else uses the water; then let it run hot for minutes.',
    },
    who: WHO.owner,
    source: 'Warning of water heaters’ manuals, common practice, no source',
  },
} as const satisfies Readonly<Record<string, CautionText>>;
