import { createLanguageService } from '../service/index.js';
import { parse } from '../language/index.js';
import { readBlock } from '../vocabulary/index.js';
import { resolve } from '../estimate/index.js';
import { weigh } from '../weigh/index.js';
import { largeEstimate } from './bench/large-estimate.js';
const text = largeEstimate(10000); console.log(text.split('\n').length, text.length);
const med=(xs:number[])=>xs.sort((a,b)=>a-b)[xs.length>>1]!.toFixed(2);
const T:Record<string,number[]>={}; const time=<X>(k:string,f:()=>X)=>{const t=process.cpuUsage();const r=f();const u=process.cpuUsage(t);(T[k]??=[]).push((u.user+u.system)/1000);return r};
for(let i=0;i<30;i++){ const t=text+'# '+i+'\n';
 const tree=time('parse',()=>parse('a',t)); time('read',()=>tree.blocks.map(readBlock)); const r=time('resolve',()=>resolve('a',{treeOf:()=>tree,resolvePath:()=>undefined})); const c=time('weigh',()=>weigh(r.estimate,new Set())); if(i===0)console.log(r.problems.length,c.options.map(o=>o.totals.total.likely.toFixed(2)+o.complete+o.totals.lines.length)); }
for(const k in T) console.log(k,med(T[k]!.slice(10)));
let cur=text; const s=createLanguageService({read:()=>({text:cur}),resolvePath:()=>undefined}); s.allDiagnostics('a'); const ks:number[]=[];
for(let i=0;i<40;i++){ cur=text.replace('Part number 500','Part number 500'+i).replace('cost 58','cost 5'+i); const t=performance.now(); s.allDiagnostics('a'); ks.push(performance.now()-t);} console.log('keystroke',med(ks.slice(10)));
