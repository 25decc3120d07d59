import { parse } from '../language/index.js';
import { readBlock } from '../vocabulary/index.js';
import { resolve } from '../estimate/index.js';
import { weigh } from '../weigh/index.js';
import { largeEstimate } from './bench/large-estimate.js';
const text = largeEstimate(10000);
const all: number[]=[];
for(let i=0;i<60;i++){ const tree=parse('a',text+'# '+i+'\n'); tree.blocks.map(readBlock); const r=resolve('a',{treeOf:()=>tree,resolvePath:()=>undefined}); const t=performance.now(); weigh(r.estimate,new Set()); all.push(performance.now()-t);}
console.log(all.slice(20).sort((a,b)=>a-b)[20]);
