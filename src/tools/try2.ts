import { parse } from '../language/index.js';
import { readBlock } from '../vocabulary/index.js';
import { resolve } from '../estimate/index.js';
import { weigh } from '../weigh/index.js';
import { largeEstimate } from './bench/large-estimate.js';
const text = largeEstimate(10000);
const which=process.argv[2];
const tree=parse('a',text); tree.blocks.map(readBlock); const r=resolve('a',{treeOf:()=>tree,resolvePath:()=>undefined}); weigh(r.estimate,new Set());
const t=performance.now(); let n=0;
while(performance.now()-t<6000){ n++; if(which==='parse') parse('a',text); else if(which==='read') {const tr=parse('a',text); tr.blocks.map(readBlock);} else if(which==='resolve') resolve('a',{treeOf:()=>tree,resolvePath:()=>undefined}); else weigh(r.estimate,new Set()); }
console.log(which, ((performance.now()-t)/n).toFixed(2));
