/** The help of the terminal tool: it teaches by example. */
export const help = `steelyard: weigh the ways out of a failed engine

  An estimate is a text file (.yard) with the options you would offer: rebuild the head,
  fit a used or exchange engine, or stop. Steelyard checks it and says what each way out
  costs in money and days, getting at the engine above all.

Usage
  steelyard check FILE…                  what is wrong, and what to write instead
  steelyard weigh FILE                   the options side by side, and which is cheaper
  steelyard weigh FILE --explain FIGURE  how a figure was made, down to the lines
  steelyard quote FILE [--option NAME]   what the customer is given: text, HTML or Markdown
  steelyard export FILE --as FORM        the comparison as html, csv (its lines) or json
  steelyard records FILE                 what the file says, as JSON
  steelyard lsp --stdio                  the language server, for other editors
  FILE may be - for standard input.

Options
  --json      machine-readable output; the schemas are in schemas/
  --explain   a figure by name: used.total, rebuild.penalty, rebuild.line.rear-head
  --option    which option to quote; the cheapest in all where nothing is said
  --as        quote: text, html or markdown; export: html, csv or json
  --output    the file to write; its end (.html, .txt, .md, .csv, .json) says the form
  --help      this text
  --version   the version

Examples
  steelyard weigh samples/pilgrim-v6.yard
  steelyard weigh samples/pilgrim-v6.yard --explain used.penalty
  steelyard quote samples/pilgrim-v6.yard --option rebuild --output quote.html
  steelyard export samples/pilgrim-v6.yard --as csv
  git show HEAD~1:job.yard | steelyard weigh -

Exit codes
  0  fine
  1  there is something to mend: errors or warnings in check, lines left out in weigh and
     export; quote makes none where a line of the option is missing, and says if a picture is
  2  a wrong command, or a file that can't be read

Colour is left out where NO_COLOR is set or the output is not a terminal.
Figures are an estimate, not a repair procedure; check your local rules.
`;
