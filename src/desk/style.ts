/** The look of all pages: paper tickets on a board, each with a strip in the colour of its verdict. */
export const style = `
:root {
  color-scheme: light dark;
  --ground: #efece4; --paper: #fffdf8; --ink: #23211c; --faint: #5d584c; --line: #cfc8b8; --link: #1b4f7a; --edge: #857d6c;
  --fail: #9e2a1d; --pass: #1f6b3a; --confirm: #7a5200; --waiting: #1d5480; --person: #5b3a86; --plain: #5d584c;
}
@media (prefers-color-scheme: dark) {
  :root {
    --ground: #1c1b18; --paper: #282621; --ink: #ece8de; --faint: #b3ac9c; --line: #46423a; --link: #9cc7ee; --edge: #8d8676;
    --fail: #f0a196; --pass: #8fd0a5; --confirm: #e2b96a; --waiting: #92c4ea; --person: #c7aef0; --plain: #b3ac9c;
  }
}
* { box-sizing: border-box }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1rem/1.5 "Liberation Sans", Arial, sans-serif }
a { color: var(--link) }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px }
.skip { position: absolute; left: -99rem }
.skip:focus { left: 1rem; top: .5rem; background: var(--paper); padding: .3rem .6rem }
header { border-bottom: 3px double var(--edge); background: var(--paper) }
header > div, main { max-width: 76rem; margin: 0 auto; padding: .6rem 1rem }
header > div { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; align-items: baseline }
header strong { font-size: 1.05rem }
nav { display: flex; flex-wrap: wrap; gap: .1rem .3rem }
nav a { padding: .3rem .5rem; text-decoration: none; border-bottom: 3px solid transparent; display: inline-block }
nav a[aria-current] { border-color: currentColor; color: var(--ink) }
header form { margin-left: auto; display: flex; gap: .6rem; align-items: baseline }
h1 { font-size: 1.5rem; margin: .6rem 0 .4rem; line-height: 1.2; overflow-wrap: anywhere }
h2 { font-size: 1.1rem; margin: 1.6rem 0 .5rem; border-bottom: 1px solid var(--line); padding-bottom: .2rem }
h3 { font-size: 1rem; margin: 0 0 .3rem; overflow-wrap: anywhere }
p { margin: .3rem 0; max-width: 70ch }
.faint { color: var(--faint) }
.tickets { list-style: none; margin: 0; padding: 0; display: grid; gap: .6rem }
.ticket { background: var(--paper); border: 1px solid var(--line); border-left: .5rem solid var(--plain); padding: .6rem .9rem; overflow-wrap: anywhere }
.ticket.fail { border-left-color: var(--fail) } .ticket.pass { border-left-color: var(--pass) }
.ticket.confirm { border-left-color: var(--confirm) } .ticket.waiting { border-left-color: var(--waiting) }
.ticket.person { border-left-color: var(--person) }
.row { display: flex; flex-wrap: wrap; gap: .1rem 1rem; align-items: baseline; justify-content: space-between }
.stamp { font-weight: 700; letter-spacing: .06em; text-transform: uppercase; font-size: .8rem; border: 1.5px solid; padding: 0 .4rem; border-radius: 2px; white-space: nowrap; color: var(--plain) }
.stamp.fail { color: var(--fail) } .stamp.pass { color: var(--pass) } .stamp.confirm { color: var(--confirm) }
.stamp.waiting { color: var(--waiting) } .stamp.person { color: var(--person) }
.ticket h2 { margin: 0; border: 0; padding: 0 }
.points { margin: .3rem 0; padding: 0; list-style: none }
.points > li { padding: .5rem 0; border-top: 1px dashed var(--line) }
form.acts label { min-width: 0 }
form.acts { display: flex; flex-wrap: wrap; gap: .4rem; align-items: end; margin: .4rem 0 0 }
label { display: block; font-size: .9rem }
label > :is(input:not([type=radio]), select, textarea) { display: block; margin-top: .3rem }
input, textarea, select { font: inherit; font-size: 1rem; color: var(--ink); background: var(--paper); border: 1px solid var(--edge); padding: .35rem .5rem; max-width: 100% }
input[type=checkbox] { width: 1.2rem; height: 1.2rem; vertical-align: -.2rem }
textarea { width: 100%; min-height: 6rem }
button, .button { font: inherit; border: 1px solid var(--edge); background: var(--ground); color: var(--ink); padding: .35rem .9rem; min-height: 2.2rem; cursor: pointer; text-decoration: none; display: inline-block }
button.main { background: var(--link); border-color: var(--link); color: var(--paper) }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: .3rem .8rem .3rem 0; border-bottom: 1px solid var(--line) }
th { white-space: nowrap }
td { overflow-wrap: break-word; max-width: 26rem }
td.number, th.number { text-align: right }
details.ticket { margin-bottom: .4rem }
.wide { overflow-x: auto }
.wide svg { max-width: 100%; height: auto; fill: var(--ink) } .wide rect { fill: var(--link) }
pre { white-space: pre-wrap; overflow-wrap: anywhere; background: var(--paper); border: 1px solid var(--line); padding: .8rem; font: .9rem/1.45 "Liberation Mono", monospace; margin: .4rem 0 }
.wall { display: flex; flex-wrap: wrap; gap: .8rem }
.station { background: var(--paper); border: 1px solid var(--line); padding: .6rem }
.gangs { display: flex; flex-wrap: wrap; gap: .3rem }
.gang { border: 1px solid var(--edge); min-width: 6.5rem; padding: .3rem; font-size: .85rem }
.gang.missing { border-style: dashed; color: var(--faint) }
.gang.wrong { border: 2px solid var(--fail) }
.gang.asked { border: 2px dotted var(--confirm) }
.face { border: 1px solid var(--line); text-align: center; padding: .15rem; margin-top: .2rem; white-space: pre-wrap }
.sheet { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 22rem); gap: 1rem }
.sheet img { width: 100%; height: auto; border: 1px solid var(--line); background: #fff }
.said { border: 2px solid var(--edge); background: var(--paper); padding: .6rem .9rem; margin: .6rem 0 }
.drop { border: 2px dashed var(--edge); padding: 1.2rem; background: var(--paper) }
.drop.over { border-style: solid; border-color: var(--link) }
dl { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: .1rem 1rem; margin: .3rem 0 }
dt { color: var(--faint) } dd { margin: 0; overflow-wrap: anywhere }
@media (max-width: 45rem) {
  .sheet { grid-template-columns: minmax(0, 1fr) }
  header form { margin-left: 0 }
  form.acts label { flex: 1 1 100% } form.acts input { width: 100% }
  dl { grid-template-columns: 1fr } dt { margin-top: .3rem }
  table.stack, .stack tbody, .stack tr, .stack td { display: block }
  .stack tr:first-child:has(th) { display: none }
  .stack td { border: 0; padding: .05rem 0 } .stack tr { border-bottom: 1px solid var(--line); padding: .4rem 0; display: block }
  .wide > svg { display: none }
  .stack td { max-width: none; overflow-wrap: anywhere }
  .stack td[data-label]:not(:empty, [data-label=""])::before { content: attr(data-label) ": "; color: var(--faint) }
  .stack td.number { text-align: left }
}
`;

/**
 * Makes the page handier; nothing needs it. Ctrl and “/” lead to the search, arrows from ticket to ticket,
 * and files can be dropped. No letter alone does anything. WCAG 2.2, 2.1.4
 */
export const script = `
const search = document.querySelector("input[type=search]");
if (search) { search.placeholder = "Ctrl + /"; search.ariaKeyShortcuts = "Control+/"; }
document.addEventListener("keydown", (event) => {
  if (event.key === "/" && event.ctrlKey && search) { event.preventDefault(); search.focus(); }
});
document.addEventListener("keydown", (event) => {
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  const here = event.target.closest(".tickets > li");
  if (step === undefined || !here || event.target.closest("input, textarea, select")) return;
  const tickets = [...document.querySelectorAll(".tickets > li")];
  const next = tickets[tickets.indexOf(here) + step]?.querySelector("a, input:not([type=hidden])");
  if (next) { event.preventDefault(); next.focus(); }
});
for (const drop of document.querySelectorAll(".drop")) {
  const files = drop.querySelector("input[type=file]");
  for (const kind of ["dragover", "dragleave", "drop"])
    drop.addEventListener(kind, (event) => {
      event.preventDefault();
      drop.classList.toggle("over", kind === "dragover");
      if (kind === "drop") files.files = event.dataTransfer.files;
    });
}
`;
