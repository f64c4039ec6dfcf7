/** The bar, and what the page says about itself; none of it is printed, and it styles nothing that is printed. */
export const studyCss = `
@media screen{body{padding-top:calc(24px + var(--bar-top,0px));padding-bottom:calc(64px + var(--bar-foot,0px))}}
.study{position:fixed;top:0;left:0;right:0;z-index:2;max-height:60vh;overflow-y:auto;padding:6px 20px;background:#fff;border-bottom:2px solid #000;font:15px/1.35 var(--sans)}
.study>*{max-width:1180px;margin:0 auto}
.study p{margin-top:0;margin-bottom:0}
.study a{font-weight:600}
.study button,.study input,.study select{font:inherit;color:#000}
.study button{min-height:32px;padding:3px 12px;background:#fff;border:1.5px solid #000;border-radius:3px}
.study :is(button,input,select):focus-visible,.study-cautions:focus-visible,.exercise input:focus-visible{outline:3px solid #000;outline-offset:2px}
.study-top{display:flex;flex-wrap:wrap;gap:2px 20px;align-items:end}
.study-controls{display:flex;flex-wrap:wrap;gap:2px 18px;align-items:end;flex:1}
.study-dial{display:grid;grid-template-columns:auto 1fr;align-items:center;gap:0 6px;min-width:162px}
.study-dial .study-label{grid-column:1/3;white-space:nowrap}
.study-dial input[type=number]{width:70px;min-height:30px;padding:2px 4px;border:1.5px solid #000;border-radius:3px}
.study-dial input[aria-invalid=true]{border-style:dashed}
.study-dial input[type=range]{width:100%;min-width:80px;min-height:30px;margin:0;accent-color:#000}
.study-buttons{display:flex;gap:8px;flex:none}
.study-label,.study legend{font-size:13.5px;line-height:18px}
.study-power{margin:0;padding:0;border:0;display:flex;gap:10px}
.study-power legend{padding:0}
.study-power label{display:inline-block}
.study input[type=radio]{width:18px;height:18px;margin:0;vertical-align:-3px;accent-color:#000}
.study-power label{padding:5px 0}
.study-faults{display:grid;gap:2px}
.study-faults[hidden]{display:none}
.study-faults select{min-height:30px;width:200px;padding:2px;border:1.5px solid #000;border-radius:3px;background:#fff}
.study-open{display:none}
.study-headline{padding-top:4px}
.study-detail,.study-cautions{font-size:14px}
.study-cautions ul{margin-top:0;margin-bottom:0;padding-left:18px}
.study-cautions li{margin:0}
.study .study-standing{font-size:13.5px}
.study-tag,.study-refusal,.study-moved,.study-verdict{font:600 14px/1.35 var(--sans)}
.study-tag{margin:12px 0 4px;padding:2px 8px;border:1.5px dashed #000;width:fit-content;max-width:100%}
.study-moved{margin:12px 0;padding:3px 8px;border:1.5px solid #000}
.study-refusal{border:1.5px solid #000;padding:5px 10px}
span.study-refusal{font:inherit;font-style:italic;padding:0 3px}
.study-fault{clear:both;margin:14px 0;padding:8px 12px;border:1.5px dashed #000;font:15px/1.45 var(--sans)}
.lesson .study-fault{margin-right:calc(-1*var(--room))}
.lesson .study-fault figure{margin-right:0;margin-left:0}
.study-fault p{margin:0 0 4px}
span[data-study=moved]{text-decoration:underline dotted 1.5px;text-underline-offset:3px}
figure[data-study=moved],.table-room:has(>[data-study=moved]){border-left:3px solid #000;padding-left:8px;margin-left:-11px}
@media screen{.set-here :is(section[data-printed],figure[data-printed],.workings,.table-room:has(>[data-printed])){border-left:3px dashed #000;padding-left:8px;margin-left:-11px}}
[data-study=waiting]{opacity:.2}
.exercise label{cursor:pointer}
.exercise label input{width:17px;height:17px;margin:0 6px 0 0;vertical-align:-3px;accent-color:#000}
.study-answer{margin:6px 0 10px;padding:6px 10px;border:1.5px solid #000}
.study-answer p{margin:0 0 3px}
@media screen and (max-width:700px),screen and (max-height:560px){
.study{top:auto;bottom:0;max-height:75vh;padding:8px 14px;border-bottom:0;border-top:2px solid #000}
.study-top{align-items:start}
.study-open{display:inline-block}
.study:not(.open) :is(.study-controls,.study-detail,.study-from){display:none}
.study:not(.open) .study-cautions{max-height:24vh;overflow-y:auto}
.study-controls{display:grid;grid-template-columns:1fr;gap:6px;flex:1 0 100%}
.study-buttons{flex:1 0 100%;justify-content:space-between;order:-1}
.study-faults select{width:100%}
.study :is(button,input,select){min-height:40px}
.study input[type=radio]{min-height:0;width:22px;height:22px}
.study-power label{padding:8px 0}
.study .study-standing{font-size:12.5px}
}
@media (prefers-reduced-motion:no-preference){[data-study=waiting]{transition:opacity .15s}}
@media print{.study,.study-tag,.study-moved,.study-fault,.study-answer,.exercise label input{display:none!important}}
`;
