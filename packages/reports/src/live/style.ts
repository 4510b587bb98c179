/** Style of the live page, on top of that of every page. */

const LAYOUT = `
main.live{max-width:1232px;padding-top:12px}
.live header{display:flex;flex-wrap:wrap;gap:8px 24px;align-items:baseline;justify-content:space-between}
.live header p{margin:0}
.tools{display:flex;flex-wrap:wrap;gap:8px;align-items:center;font-size:.875rem}
.sentence{font-size:1.125rem;line-height:1.75;max-width:none;margin:8px 0 12px}
.value{font:inherit;font-weight:600;color:var(--nl-link);background:none;border:0;padding:0 1px;text-decoration:underline;text-underline-offset:3px;cursor:pointer;min-height:24px}
.board{display:grid;grid-template:"knobs first" auto "knobs rest" 1fr / 352px minmax(0,1fr);gap:0 40px;align-items:start}
.board>.first{grid-area:first;min-width:0}.board>.knobs{grid-area:knobs}.board>.answers{grid-area:rest;min-width:0}
.board section{margin-top:24px}
.board>.first>section{margin-top:0;border:0;padding-top:0}.answers>section:first-child{margin-top:16px}
.live button,.live select,.live input{font:inherit;color:inherit}
.live button:not(.value),.live select,.live input:not([type=range]){background:var(--nl-card);border:1px solid var(--nl-axis);border-radius:4px;min-height:32px;padding:2px 10px}
.live button{cursor:pointer}.live button:disabled{color:var(--nl-muted);cursor:default;border-style:dashed}
.live select{max-width:100%}
.live [hidden]{display:none!important}
.knobs details{border-top:1px solid var(--nl-grid);margin:0;padding:4px 0 8px}
.knobs summary{font-size:1rem;font-weight:600;color:var(--nl-ink);padding:6px 0}
.knob{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:2px 8px;align-items:center;padding:6px 0}
.knob label{font-size:.9375rem}
.knob .box{display:flex;align-items:center;gap:4px}
.live .knob .box input{width:5.5em;text-align:right;font-variant-numeric:tabular-nums}
.knob .unit{min-width:1.6em;font-size:.875rem;color:var(--nl-muted)}
.knob select{grid-column:1/-1;width:100%}
.knob .slide{grid-column:1/-1;display:flex;align-items:center;gap:6px}
.knob input[type=range]{flex:1;min-width:0;height:28px;margin:0;accent-color:var(--nl-ink)}
.live .step{width:32px;padding:0}
.knob .words,.knob .help,.field .help{grid-column:1/-1;font-size:.8125rem;line-height:1.35;color:var(--nl-muted);margin:0;max-width:none}
.fault{grid-column:1/-1;margin:2px 0;color:var(--nl-danger);font-size:.875rem;line-height:1.4;max-width:none}
.fault .badge{background:var(--nl-danger);border-color:var(--nl-danger);color:var(--nl-page)}
.live .refused input,.live input[aria-invalid],.live select[aria-invalid]{border:2px solid var(--nl-danger)}
.field{padding:6px 0;border-top:1px solid var(--nl-grid)}
.field label{display:block;font-size:.875rem;overflow-wrap:anywhere}
.live .field input{width:100%}
.top{display:grid;grid-template-columns:minmax(0,1fr);gap:0}
.state{min-height:24px;margin:0;font-size:.875rem;color:var(--nl-muted)}
.answer{min-height:60px}.decides{min-height:25px}.alarm{min-height:48px}
.stale .result{color:var(--nl-muted)}
.stale .result b,.stale .result .answer{color:var(--nl-muted)}
.since{background:var(--nl-card);padding:8px 14px 6px;margin:0 0 16px;border-left:3px solid var(--nl-axis)}
.since h2{font-size:1rem;margin:0 0 2px}
.since ul{list-style:none;padding:0;margin:0;max-width:none;min-height:48px;font-variant-numeric:tabular-nums}
.since select{min-height:28px;padding:0 4px}
.ghost{position:absolute;left:2px;right:2px;bottom:0;border:1.5px solid var(--nl-axis);border-bottom:0;box-shadow:0 0 0 1px var(--nl-page)}
.cell i{transition:height .12s}
.live .figures dl{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 12px;margin:0;font-size:.875rem;line-height:1.5;font-variant-numeric:tabular-nums}
.live .figures dt{color:var(--nl-muted)}.live .figures dd{margin:0;text-align:right}
.live .figures h3{font-size:.875rem;margin:0}
.live .figures{grid-template-columns:repeat(auto-fit,minmax(230px,1fr))}
.views>details{border-top:1px solid var(--nl-grid);margin:0;padding:4px 0}
.views>details>summary{font-size:1.125rem;font-weight:600;color:var(--nl-ink);padding:8px 0}
.live .cautions details{margin:0}.live .cautions summary{color:var(--nl-ink);font-size:1rem;line-height:1.5}.live .cautions p{margin:6px 0 0}
.exercises{margin:8px 0 16px;padding-top:8px}.exercises ol{display:grid;grid-template-columns:repeat(auto-fit,minmax(300px,1fr));gap:8px 32px;list-style:none;padding:0;margin:0;max-width:none}.exercises h3{margin:0}.exercises p{margin:0 0 2px}.exercises a{display:inline-block;margin-right:14px;min-height:24px}.exercises a[aria-current]{font-weight:600;color:var(--nl-ink)}
.sticky{display:none}
.live .hidden{position:absolute}
`;

const PICTURES = `
.map{position:relative;margin:0 0 4px 34px;max-width:none}
.map canvas{display:block;width:100%;height:168px;image-rendering:pixelated;background:var(--nl-card)}
.map-hours{position:absolute;left:-34px;top:0;bottom:0;width:30px;font-size:.75rem;text-align:right;color:var(--nl-muted)}
.map-hours span{position:absolute;right:0;transform:translateY(-50%)}
#map-months{position:relative;height:20px;margin-left:34px;font-size:.75rem;color:var(--nl-muted)}
#map-months span{position:absolute;transform:translateX(-50%)}
#map-key{list-style:none;display:flex;flex-wrap:wrap;gap:2px 12px;padding:0;margin:4px 0;max-width:none;font-size:.8125rem}
#map-key i{display:inline-block;width:20px;height:12px;margin-right:4px;border:1px solid var(--nl-axis);vertical-align:-1px}
.scenes{display:grid;grid-template-columns:minmax(0,1.7fr) minmax(0,1fr);gap:0 24px}
#scene,#week-picture{display:block;width:100%;height:auto;font-size:14px;fill:var(--nl-ink)}
#scene .quiet{fill:var(--nl-muted);font-size:13px}
#scene path,#scene .part{fill:none;stroke:var(--nl-ink);stroke-width:2}
#scene #scene-absorber{stroke:var(--nl-ink);stroke-width:1.5}
#scene-layers{shape-rendering:crispEdges}
#scene-sun{fill:var(--nl-sun);stroke:var(--nl-sun-line)}
#scene .pipe,#scene .mains{stroke:var(--nl-axis);stroke-width:4}
#scene .mains{stroke:var(--nl-tank-bottom)}
#scene .coil-edge{stroke:var(--nl-ink);stroke-width:6}#scene .coil{stroke:var(--nl-page);stroke-width:3}
#scene #scene-loop{stroke:var(--nl-solar);stroke-width:3;stroke-dasharray:2 9;stroke-linecap:round;visibility:hidden}
#scene #scene-loop.flows{visibility:visible}
.plays #scene-loop.flows{animation:run var(--turn) linear infinite}
@keyframes run{to{stroke-dashoffset:-110}}
#scene #scene-draw,#scene #scene-tap{stroke:var(--nl-axis);stroke-width:4}
#scene #scene-draw.runs,#scene #scene-tap.runs{stroke:var(--nl-tank-top)}
#scene #scene-water{visibility:hidden;stroke:var(--nl-tank-top)}#scene #scene-water.runs{visibility:visible}
#scene #scene-relief{visibility:hidden;stroke:var(--nl-danger)}#scene #scene-relief.open{visibility:visible}
#scene-relief-words{font-weight:600}
#scene #scene-flame{stroke:var(--nl-axis);stroke-dasharray:3 3}#scene #scene-flame.burns{fill:var(--nl-fuel);stroke:var(--nl-fuel);stroke-dasharray:none}
#week-picture{cursor:pointer;max-width:none}
#week-picture text{font-size:12px}#week-table th{white-space:nowrap}
.sun-pump{fill:var(--nl-sun);stroke:var(--nl-sun-line);stroke-width:.8}.sun-still{fill:none;stroke:var(--nl-sun-line);stroke-width:.8}
.drawn{fill:var(--nl-tank-top)}.burnt{fill:var(--nl-fuel)}.relieved{fill:var(--nl-danger)}
#week-mark{stroke:var(--nl-ink);stroke-width:2}
#readings{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 12px;margin:0;font-size:.875rem;line-height:1.6;font-variant-numeric:tabular-nums}
#readings dt{color:var(--nl-muted)}#readings dd{margin:0;text-align:right}
.player{display:flex;flex-wrap:wrap;gap:8px 16px;align-items:center;margin:8px 0}
.player input[type=range]{flex:1 1 200px;height:28px;accent-color:var(--nl-ink)}
.pins ul{list-style:none;padding:0;margin:0 0 8px;display:flex;flex-wrap:wrap;gap:8px 20px;max-width:none}
.pins li{display:flex;gap:8px;align-items:center}
.take{display:flex;flex-wrap:wrap;gap:8px}
#link{width:100%;margin:8px 0}
`;

const NARROW = `
@media (max-width:899px){
.board{grid-template:"first" auto "knobs" auto "rest" auto / minmax(0,1fr)}
.knobs{margin-top:24px}
.scenes{grid-template-columns:minmax(0,1fr)}
.live button:not(.value),.live select,.live input:not([type=range]){min-height:44px}
.live .step{width:44px}
.knob input[type=range]{height:44px}
.value{min-height:32px}
.knobs summary,.views summary{min-height:44px}
.live .compare td{min-width:30%}
}
@media (max-width:899px) and (min-height:480px) and (scripting:enabled){
.sticky{display:block;position:sticky;top:0;z-index:2;background:var(--nl-page);border-bottom:1px solid var(--nl-grid);padding:6px 0;font-size:.875rem;line-height:1.35}
.sticky p{margin:0;max-width:none}
html{scroll-padding-top:84px}
}
@media (min-width:900px) and (min-height:480px){.knobs{position:sticky;top:8px;max-height:calc(100vh - 16px);overflow-y:auto;padding-right:8px}}
#brief-change{white-space:nowrap;overflow:hidden;text-overflow:ellipsis;color:var(--nl-muted);min-height:1.35em}
@media (prefers-reduced-motion:reduce){.cell i{transition:none}.plays #scene-loop.flows{animation:none}}
@media (forced-colors:active){.ghost{border-color:CanvasText}#map-key i{border-color:CanvasText}.map canvas,#map-key i,#scene-layers,#week-parts{forced-color-adjust:none}}
@page{margin:14mm}
@media print{
.knobs,.tools,.player,.take,.since select,.pins button,.sticky,.state,#link,.knobs summary,.views>details>summary,.noprint{display:none!important}
.board{display:block}.sentence{font-size:10pt;line-height:1.4}.value{color:inherit;text-decoration:none}
.answer,.decides,.alarm{min-height:0}
.views>details:not([open]){display:none}
.map canvas{height:34mm}
.map,#map-key i,#scene,#week-picture,.cell,.ghost{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
`;

/** The whole of it. */
export const LIVE_STYLE = LAYOUT + PICTURES + NARROW;
