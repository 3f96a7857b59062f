
use builtin;
use str;

set edit:completion:arg-completer[reeve] = {|@words|
    fn spaces {|n|
        builtin:repeat $n ' ' | str:join ''
    }
    fn cand {|text desc|
        edit:complex-candidate $text &display=$text' '(spaces (- 14 (wcswidth $text)))$desc
    }
    var command = 'reeve'
    for word $words[1..-1] {
        if (str:has-prefix $word '-') {
            break
        }
        set command = $command';'$word
    }
    var completions = [
        &'reeve'= {
            cand -h 'Print help'
            cand --help 'Print help'
            cand -V 'Print version'
            cand --version 'Print version'
            cand begin 'Write the starter shop into a new or empty folder'
            cand check 'Read a whole shop and report every fault of every file'
            cand takeoff 'Work out what one piece of a design needs: cut list, knots, hours, put-ups'
            cand costing 'Cost and price a commission, for the maker''s eyes only'
            cand bench 'Write the bench sheet of a commission: what to buy, cut and tie'
            cand quote 'Write the quote that the client signs'
            cand compare 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench'
            cand weigh 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are'
            cand mix 'Find the best mix of designs for a week''s bench hours, and what one more hour would bring'
            cand book 'Keep the order book: from enquiry to what it really took'
            cand knots 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample'
            cand schema 'Print the JSON Schema of a kind of file, for an editor to complete keys'
            cand completions 'Print completions for a shell'
            cand man 'Print the manual page'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;begin'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;check'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;takeoff'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;costing'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --confidence 'How sure the hours of its prices are, such as 80%: four times in five they suffice'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;bench'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --confidence 'How sure the hours of its prices are, such as 80%: four times in five they suffice'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;quote'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --confidence 'How sure the hours of its prices are, such as 80%: four times in five they suffice'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand --out 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR'
            cand --own 'Write what is for the maker''s eyes (costing and bench sheet) into a folder of its own in DIR'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;compare'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --price 'What buyers pay for a design, or for a size of it, in place of what its file says'
            cand --what-if 'An input otherwise than in the shop, such as wage=+10%; may be given several times'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --sort 'The column it is sorted by, the greatest first'
            cand --where 'Show only such rows: a column, a sign and a figure, such as hours<3; may be given several times'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;weigh'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --price 'The price it is weighed at; what buyers pay if not given, or else the price by the shop''s aim'
            cand --what-if 'An input otherwise than in the shop, such as wage=+10%; may be given several times'
            cand --prices 'The prices to tell what it comes to at, such as 80..140 or 80..140/2.50'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --as 'What it is written as; csv holds the prices alone'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;mix'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --price 'What buyers pay for a design, or for a size of it, in place of what its file says'
            cand --what-if 'An input otherwise than in the shop, such as wage=+10%; may be given several times'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --hours 'Bench hours in the week; those of shop.toml if not given'
            cand --demand 'The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book'= {
            cand -h 'Print help'
            cand --help 'Print help'
            cand enquire 'Enter an enquiry that is not quoted yet'
            cand issue 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
            cand list 'List the commissions and where they stand'
            cand show 'Show one commission whole, or a page of a quote as it was issued'
            cand mark 'Mark where a commission stands now'
            cand pay 'Enter a payment, or a refund with a minus sign'
            cand queue 'Show what is on the bench, what is next and when each will be done'
            cand log 'Enter what it took: minutes, cord, what was bought'
            cand undo 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
            cand start 'Start the timer for a commission'
            cand stop 'Stop the timer and enter its minutes'
            cand took 'Show what was quoted beside what it really took, of one commission or of all that are finished'
            cand learn 'Learn pace and knots from what finished work really took'
            cand summary 'Sum up months and years for the maker''s books'
            cand check 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
            cand export 'Write the whole book as JSON Lines'
            cand import 'Read a book from JSON Lines into a shop that has none'
            cand backup 'Write a copy of the book, whole and consistent, while others may go on writing'
            cand forget 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;book;enquire'= {
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;issue'= {
            cand --size 'One of the design''s sizes'
            cand --measure 'A measure in place of the design''s, such as drop=120cm; may be given several times'
            cand --confidence 'How sure the hours of its prices are, such as 80%: four times in five they suffice'
            cand --note 'A remark'
            cand --out 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR'
            cand --own 'Write what is for the maker''s eyes (costing and bench sheet) into a folder of its own in DIR'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;list'= {
            cand --stands 'Only those that stand so; may be given several times'
            cand --client 'Only those of a client whose name holds these letters'
            cand --year 'Only those first entered in this year'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book;show'= {
            cand --page 'A page or document as it was issued, such as quote.html or costing.json'
            cand --revision 'Of this revision; the last if not given'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book;mark'= {
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;pay'= {
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;queue'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book;log'= {
            cand --minutes 'Minutes at the bench'
            cand --step 'At which step'
            cand --cord 'Cord that was cut, in metres; may be given several times'
            cand --bought 'Something bought for it; may be given several times'
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;undo'= {
            cand --why 'Why'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --ahead 'Allow a day after today'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;start'= {
            cand --step 'At which step'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;stop'= {
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --drop 'Drop the timer, and enter nothing'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;took'= {
            cand --year 'Those finished in this year'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book;learn'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --yes 'Write it into knots/samples.toml'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;summary'= {
            cand --year 'One year; all if not given'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --as 'What it is written as'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;book;check'= {
            cand --seal 'A seal that was written down: say whether the book still begins with all that was in it then'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;export'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;import'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;backup'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;forget'= {
            cand --also 'A word that is to be blanked as well; may be given several times'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --on 'Work as of this day; today if not given'
            cand --yes 'Do it, and don''t ask'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;book;help'= {
            cand enquire 'Enter an enquiry that is not quoted yet'
            cand issue 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
            cand list 'List the commissions and where they stand'
            cand show 'Show one commission whole, or a page of a quote as it was issued'
            cand mark 'Mark where a commission stands now'
            cand pay 'Enter a payment, or a refund with a minus sign'
            cand queue 'Show what is on the bench, what is next and when each will be done'
            cand log 'Enter what it took: minutes, cord, what was bought'
            cand undo 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
            cand start 'Start the timer for a commission'
            cand stop 'Stop the timer and enter its minutes'
            cand took 'Show what was quoted beside what it really took, of one commission or of all that are finished'
            cand learn 'Learn pace and knots from what finished work really took'
            cand summary 'Sum up months and years for the maker''s books'
            cand check 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
            cand export 'Write the whole book as JSON Lines'
            cand import 'Read a book from JSON Lines into a shop that has none'
            cand backup 'Write a copy of the book, whole and consistent, while others may go on writing'
            cand forget 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;book;help;enquire'= {
        }
        &'reeve;book;help;issue'= {
        }
        &'reeve;book;help;list'= {
        }
        &'reeve;book;help;show'= {
        }
        &'reeve;book;help;mark'= {
        }
        &'reeve;book;help;pay'= {
        }
        &'reeve;book;help;queue'= {
        }
        &'reeve;book;help;log'= {
        }
        &'reeve;book;help;undo'= {
        }
        &'reeve;book;help;start'= {
        }
        &'reeve;book;help;stop'= {
        }
        &'reeve;book;help;took'= {
        }
        &'reeve;book;help;learn'= {
        }
        &'reeve;book;help;summary'= {
        }
        &'reeve;book;help;check'= {
        }
        &'reeve;book;help;export'= {
        }
        &'reeve;book;help;import'= {
        }
        &'reeve;book;help;backup'= {
        }
        &'reeve;book;help;forget'= {
        }
        &'reeve;book;help;help'= {
        }
        &'reeve;knots'= {
            cand -h 'Print help'
            cand --help 'Print help'
            cand list 'List the knots at hand, the shop''s own with them'
            cand show 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
            cand chart 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes'
            cand tighten 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
            cand sample 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
            cand hand 'Show what the samples say: give of cords, factors of knots, pace and pull'
            cand admit 'Take a library of computed knots into a shop, after probing it and showing what it declares'
            cand dismiss 'Take a library out of a shop'
            cand probe 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
            cand begin 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder'
            cand check 'Read a knot file and report every fault'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;knots;list'= {
            cand --kind 'Only those of this use'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;knots;show'= {
            cand --cord 'Thickness of the cord, in mm'
            cand --core 'Core legs in one column; as few as the knot allows, but two if it can, when not given'
            cand --rod 'Thickness of a rod or ring it is tied on, in mm, in place of core legs'
            cand --working 'Working legs in one knot, where that may differ'
            cand --give 'How much the cord gives: from 0 to 0.2, or `hard`'
            cand --set 'A parameter of the knot: a number, or a length such as 8cm'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --as 'What it is written as'
            cand --out 'Write it into this file, not to standard output'
            cand --demo 'Use the starter shop inside the program'
            cand --replace 'Write the file anew if it is there'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;knots;chart'= {
            cand --kind 'Only those of this use'
            cand --cord 'Thickness of the cord, in mm'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --out 'Write it into this file, not to standard output'
            cand --demo 'Use the starter shop inside the program'
            cand --replace 'Write the file anew if it is there'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;tighten'= {
            cand --cord 'Thickness of the cord, in mm'
            cand --give 'How much the cord gives: from 0 to 0.2, or `hard`'
            cand --core 'Core legs in one column; as few as the knot allows, but two if it can, when not given'
            cand --rod 'Thickness of a rod or ring it is tied on, in mm, in place of core legs'
            cand --working 'Working legs in one knot, where that may differ'
            cand --into 'Keep them in this folder'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --as 'What it is written as'
            cand --every 'All knots at hand that are drawn'
            cand --keep 'Tighten it round every core it may have, and keep the table and the shape beside its file'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;knots;sample'= {
            cand --cord 'The cord, by its name in the store; core legs are of the same cord'
            cand --knot 'The knot, by its name or another name the trade uses'
            cand --tied 'How many were tied, one after the other'
            cand --core 'Core legs; two, or as near to two as the knot allows, when not given'
            cand --rod 'Thickness of a round rod or ring it was tied on, in place of core legs'
            cand --working 'Working legs in one knot, where that may differ'
            cand --set 'A parameter of the knot: a number, or a length such as 8cm'
            cand --before 'One working leg before the first knot, such as "150 cm"'
            cand --after 'What is left of the same leg below the last knot'
            cand --made 'The length made, from the top of the first knot to the foot of the last'
            cand --minutes 'Minutes that tying them took'
            cand --on 'When they were tied'
            cand --note 'A remark'
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --only-show 'Show what it would change, and write nothing'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;hand'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --as 'What it is written as'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help (see more with ''--help'')'
            cand --help 'Print help (see more with ''--help'')'
        }
        &'reeve;knots;admit'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --yes 'Don''t ask'
            cand --unguarded 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;dismiss'= {
            cand --shop 'The shop''s folder, or one inside it; the current folder if not given'
            cand --demo 'Use the starter shop inside the program'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;probe'= {
            cand --unguarded 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back'
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;begin'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;check'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;knots;help'= {
            cand list 'List the knots at hand, the shop''s own with them'
            cand show 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
            cand chart 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes'
            cand tighten 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
            cand sample 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
            cand hand 'Show what the samples say: give of cords, factors of knots, pace and pull'
            cand admit 'Take a library of computed knots into a shop, after probing it and showing what it declares'
            cand dismiss 'Take a library out of a shop'
            cand probe 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
            cand begin 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder'
            cand check 'Read a knot file and report every fault'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;knots;help;list'= {
        }
        &'reeve;knots;help;show'= {
        }
        &'reeve;knots;help;chart'= {
        }
        &'reeve;knots;help;tighten'= {
        }
        &'reeve;knots;help;sample'= {
        }
        &'reeve;knots;help;hand'= {
        }
        &'reeve;knots;help;admit'= {
        }
        &'reeve;knots;help;dismiss'= {
        }
        &'reeve;knots;help;probe'= {
        }
        &'reeve;knots;help;begin'= {
        }
        &'reeve;knots;help;check'= {
        }
        &'reeve;knots;help;help'= {
        }
        &'reeve;schema'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;completions'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;man'= {
            cand -h 'Print help'
            cand --help 'Print help'
        }
        &'reeve;help'= {
            cand begin 'Write the starter shop into a new or empty folder'
            cand check 'Read a whole shop and report every fault of every file'
            cand takeoff 'Work out what one piece of a design needs: cut list, knots, hours, put-ups'
            cand costing 'Cost and price a commission, for the maker''s eyes only'
            cand bench 'Write the bench sheet of a commission: what to buy, cut and tie'
            cand quote 'Write the quote that the client signs'
            cand compare 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench'
            cand weigh 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are'
            cand mix 'Find the best mix of designs for a week''s bench hours, and what one more hour would bring'
            cand book 'Keep the order book: from enquiry to what it really took'
            cand knots 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample'
            cand schema 'Print the JSON Schema of a kind of file, for an editor to complete keys'
            cand completions 'Print completions for a shell'
            cand man 'Print the manual page'
            cand help 'Print this message or the help of the given subcommand(s)'
        }
        &'reeve;help;begin'= {
        }
        &'reeve;help;check'= {
        }
        &'reeve;help;takeoff'= {
        }
        &'reeve;help;costing'= {
        }
        &'reeve;help;bench'= {
        }
        &'reeve;help;quote'= {
        }
        &'reeve;help;compare'= {
        }
        &'reeve;help;weigh'= {
        }
        &'reeve;help;mix'= {
        }
        &'reeve;help;book'= {
            cand enquire 'Enter an enquiry that is not quoted yet'
            cand issue 'Issue a quote: give it a number, or its own next revision, and keep it as it is'
            cand list 'List the commissions and where they stand'
            cand show 'Show one commission whole, or a page of a quote as it was issued'
            cand mark 'Mark where a commission stands now'
            cand pay 'Enter a payment, or a refund with a minus sign'
            cand queue 'Show what is on the bench, what is next and when each will be done'
            cand log 'Enter what it took: minutes, cord, what was bought'
            cand undo 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more'
            cand start 'Start the timer for a commission'
            cand stop 'Stop the timer and enter its minutes'
            cand took 'Show what was quoted beside what it really took, of one commission or of all that are finished'
            cand learn 'Learn pace and knots from what finished work really took'
            cand summary 'Sum up months and years for the maker''s books'
            cand check 'Look through the whole book: file, rows, seals, numbers, states, sums, pages'
            cand export 'Write the whole book as JSON Lines'
            cand import 'Read a book from JSON Lines into a shop that has none'
            cand backup 'Write a copy of the book, whole and consistent, while others may go on writing'
            cand forget 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay'
        }
        &'reeve;help;book;enquire'= {
        }
        &'reeve;help;book;issue'= {
        }
        &'reeve;help;book;list'= {
        }
        &'reeve;help;book;show'= {
        }
        &'reeve;help;book;mark'= {
        }
        &'reeve;help;book;pay'= {
        }
        &'reeve;help;book;queue'= {
        }
        &'reeve;help;book;log'= {
        }
        &'reeve;help;book;undo'= {
        }
        &'reeve;help;book;start'= {
        }
        &'reeve;help;book;stop'= {
        }
        &'reeve;help;book;took'= {
        }
        &'reeve;help;book;learn'= {
        }
        &'reeve;help;book;summary'= {
        }
        &'reeve;help;book;check'= {
        }
        &'reeve;help;book;export'= {
        }
        &'reeve;help;book;import'= {
        }
        &'reeve;help;book;backup'= {
        }
        &'reeve;help;book;forget'= {
        }
        &'reeve;help;knots'= {
            cand list 'List the knots at hand, the shop''s own with them'
            cand show 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from'
            cand chart 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes'
            cand tighten 'Tighten a drawn knot: compute from its path what it takes and how far it rises'
            cand sample 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed'
            cand hand 'Show what the samples say: give of cords, factors of knots, pace and pull'
            cand admit 'Take a library of computed knots into a shop, after probing it and showing what it declares'
            cand dismiss 'Take a library out of a shop'
            cand probe 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author'
            cand begin 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder'
            cand check 'Read a knot file and report every fault'
        }
        &'reeve;help;knots;list'= {
        }
        &'reeve;help;knots;show'= {
        }
        &'reeve;help;knots;chart'= {
        }
        &'reeve;help;knots;tighten'= {
        }
        &'reeve;help;knots;sample'= {
        }
        &'reeve;help;knots;hand'= {
        }
        &'reeve;help;knots;admit'= {
        }
        &'reeve;help;knots;dismiss'= {
        }
        &'reeve;help;knots;probe'= {
        }
        &'reeve;help;knots;begin'= {
        }
        &'reeve;help;knots;check'= {
        }
        &'reeve;help;schema'= {
        }
        &'reeve;help;completions'= {
        }
        &'reeve;help;man'= {
        }
        &'reeve;help;help'= {
        }
    ]
    $completions[$command]
}
