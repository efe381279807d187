import { test } from 'vitest';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { readPattern } from '$lib/core/text/read.ts';
const lineFinder=(t:string)=>(o:number)=>t.slice(0,o).split('\n').length;
const files = [...readdirSync('/work/shared/patterns').filter(f=>f.endsWith('.txt')).map(f=>'/work/shared/patterns/'+f), ...readdirSync('static/examples').filter(f=>f.endsWith('.txt')).map(f=>'static/examples/'+f)];
const z=(c:any)=>c.length===1?String(c[0]):c.join('/');
function t(x:any):string{ return x.kind==='end'?'end':x.kind==='last'?'-'+z(x.count):x.kind==='marker'?`m${x.name??''}-${z(x.before)}`:x.kind==='gap'?`gap-${z(x.before)}`:`sec:${x.name}`;}
function p(i:any):string{switch(i.kind){case 'work':return i.operation.name+'×'+z(i.count);case 'work-to':return (i.operation?.name??'~')+'→'+t(i.target);case 'group':return '['+i.body.map(p).join(' ')+']'+(i.extent.kind==='to'?'→'+t(i.extent.target):(i.extent.kind==='times'?'*':'?')+z(i.extent.count));case 'into-one':return 'into('+i.body.map(p).join(' ')+')';case 'over':return i.section+'{'+i.body.map(p).join(' ')+'}';case 'marker':return i.action+':'+i.name;case 'turn':return 'T'+(i.mark==='none'?'':i.mark);default:return i.kind+(i.count?z(i.count):'')+(i.operation?i.operation.name:'');}}
function a(x:any):string{return x.kind==='loads'?'loads '+x.loads.map(z).join('-'):x.kind+(x.of?' '+x.of:'')+' '+z(x.count)}
test('dump', () => {
  let out='';
  for (const f of files) {
    const text=readFileSync(f,'utf8'); const t0=performance.now(); const r=readPattern(text); const dt=performance.now()-t0; const line=lineFinder(text);
    out+=`##### ${f} ${dt.toFixed(1)}ms\nTITLE ${r.title} SIZES ${r.sizes} ${JSON.stringify(r.gauge)} ${JSON.stringify(r.needles)}\n`;
    out+='INTRO '+r.introduction.map((s:any)=>s.text).join(' | ')+'\n';
    for(const s of r.stages){ out+=`== ${s.name} @${s.line} over=${JSON.stringify(s.over)}\n`; for(const x of s.statements as any[]){ out+=`  ${line(x.span.from)} ${x.kind} `; if(x.kind==='row') out+=`${x.noun} ${JSON.stringify(x.numbers.numbers??x.numbers)} ${x.name} ${x.side} ${x.sizes??''}: ${x.body.map(p).join(' ')} | ${x.assertions.map(a).join('; ')}`; else if(x.kind==='prose') out+=x.text.replace(/\n/g,'⏎'); else out+=JSON.stringify({...x,span:undefined,kind:undefined}).replace(/"span":\{[^}]*\},?/g,''); out+='\n'; } }
    for(const d of r.diagnostics) out+=`  !! ${line(d.span.from)} ${d.severity} ${d.code}: ${d.message} / ${d.remedy}\n`;
  }
  writeFileSync('/tmp/rp/dump.txt',out);
});
