/** The help of the terminal tool: it teaches by example. */
export const help = `steelyard: weigh the ways out of a failed engine

  An estimate is a text file (.yard) with the options you would offer: rebuild the head,
  fit a used or exchange engine, or stop. Steelyard checks it and says what each way out
  costs in money and days, getting at the engine above all.

Usage
  steelyard check FILE…                  what is wrong, and what to write instead; also of folders
  steelyard weigh FILE                   the options side by side, and which is cheaper
  steelyard weigh FILE --explain FIGURE  how a figure was made, down to the lines
  steelyard quote FILE [--option NAME]   what the customer is given: text, HTML or Markdown
  steelyard quote FILE --supplement      what is new since it was authorised, and the new total
  steelyard quote FILE --stage NAME      the same for work before the decision, and what stopping there costs
  steelyard export FILE --as FORM        the comparison as html, csv (its lines) or json
  steelyard changes FILE                 what changed since the last commit, in money and days
  steelyard changes OLD NEW              the same between two versions: files, or REV:path as in git
  steelyard git totals on                git diff, log -p and show end estimates with their totals; or off
  steelyard git check on                 errors in staged estimates stop a commit; or off
  steelyard git                          which of the two is on
  steelyard list [FOLDER…]               the estimates by state, with what each waits for
  steelyard closing FILE                 what a job that is over really took, beside its estimate
  steelyard history [FOLDER|FILE…]       what jobs really took, over all closed estimates: the
                                         shop’s own book of times; also 'jobs/**/*.yard'
  steelyard records FILE                 what the file says, as JSON (schemas/records.schema.json)
  steelyard lsp --stdio                  the language server, for other editors
  FILE may be - for standard input; the shared files that it uses are those on the disk now.

Options
  --json      machine-readable output; the schemas are in schemas/
  --explain   a figure by name: used.total, rebuild.penalty, rebuild.line.rear-head
  --option    which option to quote; where nothing is said the cheapest in all, if all can be read
  --since     changes: the commit to compare one file with, also by its old name;
              with --supplement: the version that was authorised, OLD.yard or REV:path
  --stage     which stage to quote, instead of an option
  --as        check: text, json or sarif, for build servers; quote: text, html or markdown;
              export: html, csv or json; changes: text, html, json or sarif
  --output    the file to write; its end (.html, .txt, .md, .csv, .json, .sarif) says the form,
              and one that promises another form than --as is refused
  --today     the day that states and ages are told for, where it is not today
  --help      this text
  --version   the version

Examples
  steelyard weigh samples/pilgrim-v6.yard
  steelyard weigh samples/pilgrim-v6.yard --explain used.penalty
  steelyard quote samples/pilgrim-v6.yard --option rebuild --output quote.html
  steelyard export samples/pilgrim-v6.yard --as csv
  git show HEAD~1:job.yard | steelyard weigh -
  steelyard changes job.yard --since HEAD~3 --output changes.html
  steelyard changes v1:job.yard HEAD:job.yard
  steelyard check estimates --as sarif --output check.sarif
  steelyard list estimates
  steelyard history estimates --json > book.json

Exit codes
  0  fine
  1  there is something to mend: errors or warnings in check; lines left out in weigh,
     export, closing and list; files that list or history can't read; for quote, a line of
     the option that is missing, so that none is made, or a picture, which it says;
     for changes, lines that can't be read in one of the versions (a change is no finding)
  2  a wrong command, a file that can't be read, a folder without an estimate in check,
     or an output that can't be written to the end

Colour is left out where NO_COLOR is set or the output is not a terminal. In a terminal weigh
keeps within its columns, or within those that COLUMNS says.
Figures are an estimate, not a repair procedure; check your local rules.
`;
