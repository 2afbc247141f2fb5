#!/usr/bin/env node
const x: string = process.version;
console.log(x, process.argv.slice(2));
