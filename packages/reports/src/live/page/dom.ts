/** Elements without a library. Text goes in as text, never as markup. */

type Child = Node | string;
type Props = Readonly<Record<string, string | boolean | ((event: Event) => void)>>;

function fill<T extends Element>(element: T, props: Props, children: readonly Child[]): T {
  for (const [name, value] of Object.entries(props)) {
    if (typeof value === 'function') element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, '');
    else if (value !== false) element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

/** Makes an element; functions among the properties listen to the event of their name. */
export const make = <Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  props: Props = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] => fill(document.createElement(tag), props, children);

/** Makes an element of a drawing. */
export const draw = (tag: string, props: Props = {}, ...children: readonly Child[]): SVGElement =>
  fill(document.createElementNS('http://www.w3.org/2000/svg', tag) as SVGElement, props, children);

/** An element that the page has. */
export function find<T extends Element = HTMLElement>(selector: string): T {
  const found = document.querySelector<T>(selector);
  if (found === null) throw new Error(`the page has no ${selector}`);
  return found;
}

const GLUE = /(\d) (?=(?:%|°[CF]|kWh|kBtu|therms?|L|gal|h|K|m²|ft²|m|ft|W|kg|lb)(?![\w/]))/g;

/** Numbers stay on the line of their unit. */
export const glued = (text: string): string => text.replace(GLUE, '$1\u00a0');

const SHAPES = {
  danger: ['M5 1h6l4 4v6l-4 4H5l-4-4V5z', 'M8 4v5M8 11v1.5'],
  warning: ['M8 1.5l7 13H1z', 'M8 6v4M8 11.5v1.5'],
  note: ['M8 1.5a6.5 6.5 0 1 0 .01 0z', 'M8 4v1.5M8 7v5'],
} as const;

/** Sign and word of a severity, told apart by shape. */
export function badge(severity: keyof typeof SHAPES, word: string): HTMLElement {
  const paths = SHAPES[severity].map((d) =>
    draw('path', { d, fill: 'none', stroke: 'currentColor', 'stroke-width': '1.6' }),
  );
  return make('span', { class: 'badge' }, draw('svg', { viewBox: '0 0 16 16', 'aria-hidden': 'true' }, ...paths), word);
}
