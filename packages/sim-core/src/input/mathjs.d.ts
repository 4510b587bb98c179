// The prebuilt bundle starts in a seventh of the time of the package's module entry, but comes without types.
declare module 'mathjs/lib/browser/math.js' {
  import type { MathJsInstance } from 'mathjs';

  const math: MathJsInstance;
  export default math;
}
