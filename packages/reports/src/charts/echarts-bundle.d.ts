// The one-file build has no types of its own; they are those of the package.
declare module 'echarts/dist/echarts.esm.min.mjs' {
  export * from 'echarts';
}
