// An extension of noonloop: three functions, none of which the packages know.
export { type TubeField, tubeField } from './collector.ts';
export { evenings } from './section.ts';
export { parseStation } from './weather.ts';
