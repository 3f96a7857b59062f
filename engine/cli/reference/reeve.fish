# Print an optspec for argparse to handle cmd's options that are independent of any subcommand.
function __fish_reeve_global_optspecs
    string join \n h/help V/version
end

function __fish_reeve_needs_command
    # Figure out if the current invocation already has a command.
    set -l cmd (commandline -opc)
    set -e cmd[1]
    argparse -s (__fish_reeve_global_optspecs) -- $cmd 2>/dev/null
    or return
    if set -q argv[1]
        # Also print the command, so this can be used to figure out what it is.
        echo $argv[1]
        return 1
    end
    return 0
end

function __fish_reeve_using_subcommand
    set -l cmd (__fish_reeve_needs_command)
    test -z "$cmd"
    and return 1
    contains -- $cmd[1] $argv
end

complete -c reeve -n "__fish_reeve_needs_command" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_needs_command" -s V -l version -d 'Print version'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "begin" -d 'Write the starter shop into a new or empty folder'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "check" -d 'Read a whole shop and report every fault of every file'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "takeoff" -d 'Work out what one piece of a design needs: cut list, knots, hours, put-ups'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "costing" -d 'Cost and price a commission, for the maker\'s eyes only'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "bench" -d 'Write the bench sheet of a commission: what to buy, cut and tie'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "quote" -d 'Write the quote that the client signs'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "compare" -d 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "weigh" -d 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "mix" -d 'Find the best mix of designs for a week\'s bench hours, and what one more hour would bring'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "book" -d 'Keep the order book: from enquiry to what it really took'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "knots" -d 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "schema" -d 'Print the JSON Schema of a kind of file, for an editor to complete keys'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "completions" -d 'Print completions for a shell'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "man" -d 'Print the manual page'
complete -c reeve -n "__fish_reeve_needs_command" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand begin" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand check" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand check" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand check" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand check" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand takeoff" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l confidence -d 'How sure the hours of its prices are, such as 80%: four times in five they suffice' -r
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand costing" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand costing" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l confidence -d 'How sure the hours of its prices are, such as 80%: four times in five they suffice' -r
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand bench" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand bench" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l confidence -d 'How sure the hours of its prices are, such as 80%: four times in five they suffice' -r
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l out -d 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l own -d 'Write what is for the maker\'s eyes (costing and bench sheet) into a folder of its own in DIR' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand quote" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand quote" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l price -d 'What buyers pay for a design, or for a size of it, in place of what its file says' -r
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l what-if -d 'An input otherwise than in the shop, such as wage=+10%; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l sort -d 'The column it is sorted by, the greatest first' -r -f -a "design\t''
size\t''
cord\t''
put-ups\t''
weight\t''
hours\t''
material\t''
labour\t''
overhead\t''
cost\t''
lowest\t''
price\t''
before-fees\t''
fees\t''
margin\t''
margin-percent\t''
per-hour\t''
contribution\t''
market\t''
market-margin\t''
market-percent\t''
market-per-hour\t''
weekly\t''"
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l where -d 'Show only such rows: a column, a sign and a figure, such as hours<3; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
csv\t'Comma-separated values, for a spreadsheet'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand compare" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand compare" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l price -d 'The price it is weighed at; what buyers pay if not given, or else the price by the shop\'s aim' -r
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l what-if -d 'An input otherwise than in the shop, such as wage=+10%; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l prices -d 'The prices to tell what it comes to at, such as 80..140 or 80..140/2.50' -r
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l as -d 'What it is written as; csv holds the prices alone' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
csv\t'Comma-separated values, for a spreadsheet'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand weigh" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l price -d 'What buyers pay for a design, or for a size of it, in place of what its file says' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l what-if -d 'An input otherwise than in the shop, such as wage=+10%; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l hours -d 'Bench hours in the week; those of shop.toml if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l demand -d 'The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says' -r
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand mix" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand mix" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "enquire" -d 'Enter an enquiry that is not quoted yet'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "issue" -d 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "list" -d 'List the commissions and where they stand'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "show" -d 'Show one commission whole, or a page of a quote as it was issued'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "mark" -d 'Mark where a commission stands now'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "pay" -d 'Enter a payment, or a refund with a minus sign'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "queue" -d 'Show what is on the bench, what is next and when each will be done'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "log" -d 'Enter what it took: minutes, cord, what was bought'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "undo" -d 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "start" -d 'Start the timer for a commission'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "stop" -d 'Stop the timer and enter its minutes'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "took" -d 'Show what was quoted beside what it really took, of one commission or of all that are finished'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "learn" -d 'Learn pace and knots from what finished work really took'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "summary" -d 'Sum up months and years for the maker\'s books'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "check" -d 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "export" -d 'Write the whole book as JSON Lines'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "import" -d 'Read a book from JSON Lines into a shop that has none'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "backup" -d 'Write a copy of the book, whole and consistent, while others may go on writing'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "forget" -d 'Blank a client\'s name and address, and what you typed of them, in the whole book; numbers and sums stay'
complete -c reeve -n "__fish_reeve_using_subcommand book; and not __fish_seen_subcommand_from enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from enquire" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from enquire" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from enquire" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from enquire" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from enquire" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l size -d 'One of the design\'s sizes' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l measure -d 'A measure in place of the design\'s, such as drop=120cm; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l confidence -d 'How sure the hours of its prices are, such as 80%: four times in five they suffice' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l out -d 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l own -d 'Write what is for the maker\'s eyes (costing and bench sheet) into a folder of its own in DIR' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from issue" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l stands -d 'Only those that stand so; may be given several times' -r -f -a "enquiry\t''
quoted\t''
lapsed\t''
accepted\t''
declined\t''
on-bench\t''
finished\t''
delivered\t''
paid\t''
cancelled\t''"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l client -d 'Only those of a client whose name holds these letters' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l year -d 'Only those first entered in this year' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
csv\t'Comma-separated values, for a spreadsheet'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from list" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -l page -d 'A page or document as it was issued, such as quote.html or costing.json' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -l revision -d 'Of this revision; the last if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from show" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from mark" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from mark" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from mark" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from mark" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from mark" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from pay" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from pay" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from pay" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from pay" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from pay" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from queue" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from queue" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from queue" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from queue" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l minutes -d 'Minutes at the bench' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l step -d 'At which step' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l cord -d 'Cord that was cut, in metres; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l bought -d 'Something bought for it; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from log" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from undo" -l why -d 'Why' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from undo" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from undo" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from undo" -l ahead -d 'Allow a day after today'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from undo" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from start" -l step -d 'At which step' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from start" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from start" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from stop" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from stop" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from stop" -l drop -d 'Drop the timer, and enter nothing'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from stop" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from took" -l year -d 'Those finished in this year' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from took" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from took" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from took" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from took" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from learn" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from learn" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from learn" -l yes -d 'Write it into knots/samples.toml'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from learn" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from summary" -l year -d 'One year; all if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from summary" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from summary" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from summary" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
csv\t'Comma-separated values, for a spreadsheet'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from summary" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from check" -l seal -d 'A seal that was written down: say whether the book still begins with all that was in it then' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from check" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from check" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from check" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from export" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from export" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from export" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from import" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from import" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from import" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from backup" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from backup" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from backup" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from forget" -l also -d 'A word that is to be blanked as well; may be given several times' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from forget" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from forget" -l on -d 'Work as of this day; today if not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from forget" -l yes -d 'Do it, and don\'t ask'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from forget" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "enquire" -d 'Enter an enquiry that is not quoted yet'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "issue" -d 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "list" -d 'List the commissions and where they stand'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "show" -d 'Show one commission whole, or a page of a quote as it was issued'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "mark" -d 'Mark where a commission stands now'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "pay" -d 'Enter a payment, or a refund with a minus sign'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "queue" -d 'Show what is on the bench, what is next and when each will be done'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "log" -d 'Enter what it took: minutes, cord, what was bought'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "undo" -d 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "start" -d 'Start the timer for a commission'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "stop" -d 'Stop the timer and enter its minutes'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "took" -d 'Show what was quoted beside what it really took, of one commission or of all that are finished'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "learn" -d 'Learn pace and knots from what finished work really took'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "summary" -d 'Sum up months and years for the maker\'s books'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "check" -d 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "export" -d 'Write the whole book as JSON Lines'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "import" -d 'Read a book from JSON Lines into a shop that has none'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "backup" -d 'Write a copy of the book, whole and consistent, while others may go on writing'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "forget" -d 'Blank a client\'s name and address, and what you typed of them, in the whole book; numbers and sums stay'
complete -c reeve -n "__fish_reeve_using_subcommand book; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "list" -d 'List the knots at hand, the shop\'s own with them'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "show" -d 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "chart" -d 'Write the chart of the knots, to pin to a wall: a page with each one\'s drawing and what it takes'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "tighten" -d 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "sample" -d 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "hand" -d 'Show what the samples say: give of cords, factors of knots, pace and pull'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "admit" -d 'Take a library of computed knots into a shop, after probing it and showing what it declares'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "dismiss" -d 'Take a library out of a shop'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "probe" -d 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "begin" -d 'Write a small library of computed knots to begin one\'s own from, in Rust and in C, into a new or empty folder'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "check" -d 'Read a knot file and report every fault'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and not __fish_seen_subcommand_from list show chart tighten sample hand admit dismiss probe begin check help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from list" -l kind -d 'Only those of this use' -r -f -a "sennit\t''
row\t''
mounting\t''
wrap\t''
single\t''"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from list" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from list" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from list" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from list" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l cord -d 'Thickness of the cord, in mm' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l core -d 'Core legs in one column; as few as the knot allows, but two if it can, when not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l rod -d 'Thickness of a rod or ring it is tied on, in mm, in place of core legs' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l working -d 'Working legs in one knot, where that may differ' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l give -d 'How much the cord gives: from 0 to 0.2, or `hard`' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l set -d 'A parameter of the knot: a number, or a length such as 8cm' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
html\t'One self-contained page'
svg\t'The drawing alone'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l out -d 'Write it into this file, not to standard output' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -l replace -d 'Write the file anew if it is there'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from show" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l kind -d 'Only those of this use' -r -f -a "sennit\t''
row\t''
mounting\t''
wrap\t''
single\t''"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l cord -d 'Thickness of the cord, in mm' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l out -d 'Write it into this file, not to standard output' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -l replace -d 'Write the file anew if it is there'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from chart" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l cord -d 'Thickness of the cord, in mm' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l give -d 'How much the cord gives: from 0 to 0.2, or `hard`' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l core -d 'Core legs in one column; as few as the knot allows, but two if it can, when not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l rod -d 'Thickness of a rod or ring it is tied on, in mm, in place of core legs' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l working -d 'Working legs in one knot, where that may differ' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l into -d 'Keep them in this folder' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l every -d 'All knots at hand that are drawn'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l keep -d 'Tighten it round every core it may have, and keep the table and the shape beside its file'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from tighten" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l cord -d 'The cord, by its name in the store; core legs are of the same cord' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l knot -d 'The knot, by its name or another name the trade uses' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l tied -d 'How many were tied, one after the other' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l core -d 'Core legs; two, or as near to two as the knot allows, when not given' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l rod -d 'Thickness of a round rod or ring it was tied on, in place of core legs' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l working -d 'Working legs in one knot, where that may differ' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l set -d 'A parameter of the knot: a number, or a length such as 8cm' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l before -d 'One working leg before the first knot, such as "150 cm"' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l after -d 'What is left of the same leg below the last knot' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l made -d 'The length made, from the top of the first knot to the foot of the last' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l minutes -d 'Minutes that tying them took' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l on -d 'When they were tied' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l note -d 'A remark' -r
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l only-show -d 'Show what it would change, and write nothing'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from sample" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from hand" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from hand" -l as -d 'What it is written as' -r -f -a "text\t'Plain text, 80 columns'
json\t'For other programs'"
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from hand" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from hand" -s h -l help -d 'Print help (see more with \'--help\')'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from admit" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from admit" -l yes -d 'Don\'t ask'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from admit" -l unguarded -d 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from admit" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from admit" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from dismiss" -l shop -d 'The shop\'s folder, or one inside it; the current folder if not given' -r -F
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from dismiss" -l demo -d 'Use the starter shop inside the program'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from dismiss" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from probe" -l unguarded -d 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from probe" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from begin" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from check" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "list" -d 'List the knots at hand, the shop\'s own with them'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "show" -d 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "chart" -d 'Write the chart of the knots, to pin to a wall: a page with each one\'s drawing and what it takes'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "tighten" -d 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "sample" -d 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "hand" -d 'Show what the samples say: give of cords, factors of knots, pace and pull'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "admit" -d 'Take a library of computed knots into a shop, after probing it and showing what it declares'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "dismiss" -d 'Take a library out of a shop'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "probe" -d 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "begin" -d 'Write a small library of computed knots to begin one\'s own from, in Rust and in C, into a new or empty folder'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "check" -d 'Read a knot file and report every fault'
complete -c reeve -n "__fish_reeve_using_subcommand knots; and __fish_seen_subcommand_from help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand schema" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand completions" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand man" -s h -l help -d 'Print help'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "begin" -d 'Write the starter shop into a new or empty folder'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "check" -d 'Read a whole shop and report every fault of every file'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "takeoff" -d 'Work out what one piece of a design needs: cut list, knots, hours, put-ups'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "costing" -d 'Cost and price a commission, for the maker\'s eyes only'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "bench" -d 'Write the bench sheet of a commission: what to buy, cut and tie'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "quote" -d 'Write the quote that the client signs'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "compare" -d 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "weigh" -d 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "mix" -d 'Find the best mix of designs for a week\'s bench hours, and what one more hour would bring'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "book" -d 'Keep the order book: from enquiry to what it really took'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "knots" -d 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "schema" -d 'Print the JSON Schema of a kind of file, for an editor to complete keys'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "completions" -d 'Print completions for a shell'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "man" -d 'Print the manual page'
complete -c reeve -n "__fish_reeve_using_subcommand help; and not __fish_seen_subcommand_from begin check takeoff costing bench quote compare weigh mix book knots schema completions man help" -f -a "help" -d 'Print this message or the help of the given subcommand(s)'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "enquire" -d 'Enter an enquiry that is not quoted yet'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "issue" -d 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "list" -d 'List the commissions and where they stand'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "show" -d 'Show one commission whole, or a page of a quote as it was issued'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "mark" -d 'Mark where a commission stands now'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "pay" -d 'Enter a payment, or a refund with a minus sign'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "queue" -d 'Show what is on the bench, what is next and when each will be done'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "log" -d 'Enter what it took: minutes, cord, what was bought'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "undo" -d 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "start" -d 'Start the timer for a commission'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "stop" -d 'Stop the timer and enter its minutes'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "took" -d 'Show what was quoted beside what it really took, of one commission or of all that are finished'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "learn" -d 'Learn pace and knots from what finished work really took'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "summary" -d 'Sum up months and years for the maker\'s books'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "check" -d 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "export" -d 'Write the whole book as JSON Lines'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "import" -d 'Read a book from JSON Lines into a shop that has none'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "backup" -d 'Write a copy of the book, whole and consistent, while others may go on writing'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from book" -f -a "forget" -d 'Blank a client\'s name and address, and what you typed of them, in the whole book; numbers and sums stay'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "list" -d 'List the knots at hand, the shop\'s own with them'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "show" -d 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "chart" -d 'Write the chart of the knots, to pin to a wall: a page with each one\'s drawing and what it takes'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "tighten" -d 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "sample" -d 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "hand" -d 'Show what the samples say: give of cords, factors of knots, pace and pull'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "admit" -d 'Take a library of computed knots into a shop, after probing it and showing what it declares'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "dismiss" -d 'Take a library out of a shop'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "probe" -d 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "begin" -d 'Write a small library of computed knots to begin one\'s own from, in Rust and in C, into a new or empty folder'
complete -c reeve -n "__fish_reeve_using_subcommand help; and __fish_seen_subcommand_from knots" -f -a "check" -d 'Read a knot file and report every fault'
