
using namespace System.Management.Automation
using namespace System.Management.Automation.Language

Register-ArgumentCompleter -Native -CommandName 'reeve' -ScriptBlock {
    param($wordToComplete, $commandAst, $cursorPosition)

    $commandElements = $commandAst.CommandElements
    $command = @(
        'reeve'
        for ($i = 1; $i -lt $commandElements.Count; $i++) {
            $element = $commandElements[$i]
            if ($element -isnot [StringConstantExpressionAst] -or
                $element.StringConstantType -ne [StringConstantType]::BareWord -or
                $element.Value.StartsWith('-') -or
                $element.Value -eq $wordToComplete) {
                break
        }
        $element.Value
    }) -join ';'

    $completions = @(switch ($command) {
        'reeve' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('-V', '-V ', [CompletionResultType]::ParameterName, 'Print version')
            [CompletionResult]::new('--version', '--version', [CompletionResultType]::ParameterName, 'Print version')
            [CompletionResult]::new('begin', 'begin', [CompletionResultType]::ParameterValue, 'Write the starter shop into a new or empty folder')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Read a whole shop and report every fault of every file')
            [CompletionResult]::new('takeoff', 'takeoff', [CompletionResultType]::ParameterValue, 'Work out what one piece of a design needs: cut list, knots, hours, put-ups')
            [CompletionResult]::new('costing', 'costing', [CompletionResultType]::ParameterValue, 'Cost and price a commission, for the maker''s eyes only')
            [CompletionResult]::new('bench', 'bench', [CompletionResultType]::ParameterValue, 'Write the bench sheet of a commission: what to buy, cut and tie')
            [CompletionResult]::new('quote', 'quote', [CompletionResultType]::ParameterValue, 'Write the quote that the client signs')
            [CompletionResult]::new('compare', 'compare', [CompletionResultType]::ParameterValue, 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench')
            [CompletionResult]::new('weigh', 'weigh', [CompletionResultType]::ParameterValue, 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are')
            [CompletionResult]::new('mix', 'mix', [CompletionResultType]::ParameterValue, 'Find the best mix of designs for a week''s bench hours, and what one more hour would bring')
            [CompletionResult]::new('book', 'book', [CompletionResultType]::ParameterValue, 'Keep the order book: from enquiry to what it really took')
            [CompletionResult]::new('knots', 'knots', [CompletionResultType]::ParameterValue, 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample')
            [CompletionResult]::new('schema', 'schema', [CompletionResultType]::ParameterValue, 'Print the JSON Schema of a kind of file, for an editor to complete keys')
            [CompletionResult]::new('completions', 'completions', [CompletionResultType]::ParameterValue, 'Print completions for a shell')
            [CompletionResult]::new('man', 'man', [CompletionResultType]::ParameterValue, 'Print the manual page')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;begin' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;check' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;takeoff' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;costing' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--confidence', '--confidence', [CompletionResultType]::ParameterName, 'How sure the hours of its prices are, such as 80%: four times in five they suffice')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;bench' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--confidence', '--confidence', [CompletionResultType]::ParameterName, 'How sure the hours of its prices are, such as 80%: four times in five they suffice')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;quote' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--confidence', '--confidence', [CompletionResultType]::ParameterName, 'How sure the hours of its prices are, such as 80%: four times in five they suffice')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--out', '--out', [CompletionResultType]::ParameterName, 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR')
            [CompletionResult]::new('--own', '--own', [CompletionResultType]::ParameterName, 'Write what is for the maker''s eyes (costing and bench sheet) into a folder of its own in DIR')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;compare' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--price', '--price', [CompletionResultType]::ParameterName, 'What buyers pay for a design, or for a size of it, in place of what its file says')
            [CompletionResult]::new('--what-if', '--what-if', [CompletionResultType]::ParameterName, 'An input otherwise than in the shop, such as wage=+10%; may be given several times')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--sort', '--sort', [CompletionResultType]::ParameterName, 'The column it is sorted by, the greatest first')
            [CompletionResult]::new('--where', '--where', [CompletionResultType]::ParameterName, 'Show only such rows: a column, a sign and a figure, such as hours<3; may be given several times')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;weigh' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--price', '--price', [CompletionResultType]::ParameterName, 'The price it is weighed at; what buyers pay if not given, or else the price by the shop''s aim')
            [CompletionResult]::new('--what-if', '--what-if', [CompletionResultType]::ParameterName, 'An input otherwise than in the shop, such as wage=+10%; may be given several times')
            [CompletionResult]::new('--prices', '--prices', [CompletionResultType]::ParameterName, 'The prices to tell what it comes to at, such as 80..140 or 80..140/2.50')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as; csv holds the prices alone')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;mix' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--price', '--price', [CompletionResultType]::ParameterName, 'What buyers pay for a design, or for a size of it, in place of what its file says')
            [CompletionResult]::new('--what-if', '--what-if', [CompletionResultType]::ParameterName, 'An input otherwise than in the shop, such as wage=+10%; may be given several times')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--hours', '--hours', [CompletionResultType]::ParameterName, 'Bench hours in the week; those of shop.toml if not given')
            [CompletionResult]::new('--demand', '--demand', [CompletionResultType]::ParameterName, 'The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('enquire', 'enquire', [CompletionResultType]::ParameterValue, 'Enter an enquiry that is not quoted yet')
            [CompletionResult]::new('issue', 'issue', [CompletionResultType]::ParameterValue, 'Issue a quote: give it a number, or its own next revision, and keep it as it is')
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the commissions and where they stand')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one commission whole, or a page of a quote as it was issued')
            [CompletionResult]::new('mark', 'mark', [CompletionResultType]::ParameterValue, 'Mark where a commission stands now')
            [CompletionResult]::new('pay', 'pay', [CompletionResultType]::ParameterValue, 'Enter a payment, or a refund with a minus sign')
            [CompletionResult]::new('queue', 'queue', [CompletionResultType]::ParameterValue, 'Show what is on the bench, what is next and when each will be done')
            [CompletionResult]::new('log', 'log', [CompletionResultType]::ParameterValue, 'Enter what it took: minutes, cord, what was bought')
            [CompletionResult]::new('undo', 'undo', [CompletionResultType]::ParameterValue, 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more')
            [CompletionResult]::new('start', 'start', [CompletionResultType]::ParameterValue, 'Start the timer for a commission')
            [CompletionResult]::new('stop', 'stop', [CompletionResultType]::ParameterValue, 'Stop the timer and enter its minutes')
            [CompletionResult]::new('took', 'took', [CompletionResultType]::ParameterValue, 'Show what was quoted beside what it really took, of one commission or of all that are finished')
            [CompletionResult]::new('learn', 'learn', [CompletionResultType]::ParameterValue, 'Learn pace and knots from what finished work really took')
            [CompletionResult]::new('summary', 'summary', [CompletionResultType]::ParameterValue, 'Sum up months and years for the maker''s books')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Look through the whole book: file, rows, seals, numbers, states, sums, pages')
            [CompletionResult]::new('export', 'export', [CompletionResultType]::ParameterValue, 'Write the whole book as JSON Lines')
            [CompletionResult]::new('import', 'import', [CompletionResultType]::ParameterValue, 'Read a book from JSON Lines into a shop that has none')
            [CompletionResult]::new('backup', 'backup', [CompletionResultType]::ParameterValue, 'Write a copy of the book, whole and consistent, while others may go on writing')
            [CompletionResult]::new('forget', 'forget', [CompletionResultType]::ParameterValue, 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;book;enquire' {
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;issue' {
            [CompletionResult]::new('--size', '--size', [CompletionResultType]::ParameterName, 'One of the design''s sizes')
            [CompletionResult]::new('--measure', '--measure', [CompletionResultType]::ParameterName, 'A measure in place of the design''s, such as drop=120cm; may be given several times')
            [CompletionResult]::new('--confidence', '--confidence', [CompletionResultType]::ParameterName, 'How sure the hours of its prices are, such as 80%: four times in five they suffice')
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--out', '--out', [CompletionResultType]::ParameterName, 'Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR')
            [CompletionResult]::new('--own', '--own', [CompletionResultType]::ParameterName, 'Write what is for the maker''s eyes (costing and bench sheet) into a folder of its own in DIR')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;list' {
            [CompletionResult]::new('--stands', '--stands', [CompletionResultType]::ParameterName, 'Only those that stand so; may be given several times')
            [CompletionResult]::new('--client', '--client', [CompletionResultType]::ParameterName, 'Only those of a client whose name holds these letters')
            [CompletionResult]::new('--year', '--year', [CompletionResultType]::ParameterName, 'Only those first entered in this year')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book;show' {
            [CompletionResult]::new('--page', '--page', [CompletionResultType]::ParameterName, 'A page or document as it was issued, such as quote.html or costing.json')
            [CompletionResult]::new('--revision', '--revision', [CompletionResultType]::ParameterName, 'Of this revision; the last if not given')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book;mark' {
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;pay' {
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;queue' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book;log' {
            [CompletionResult]::new('--minutes', '--minutes', [CompletionResultType]::ParameterName, 'Minutes at the bench')
            [CompletionResult]::new('--step', '--step', [CompletionResultType]::ParameterName, 'At which step')
            [CompletionResult]::new('--cord', '--cord', [CompletionResultType]::ParameterName, 'Cord that was cut, in metres; may be given several times')
            [CompletionResult]::new('--bought', '--bought', [CompletionResultType]::ParameterName, 'Something bought for it; may be given several times')
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;undo' {
            [CompletionResult]::new('--why', '--why', [CompletionResultType]::ParameterName, 'Why')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--ahead', '--ahead', [CompletionResultType]::ParameterName, 'Allow a day after today')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;start' {
            [CompletionResult]::new('--step', '--step', [CompletionResultType]::ParameterName, 'At which step')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;stop' {
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--drop', '--drop', [CompletionResultType]::ParameterName, 'Drop the timer, and enter nothing')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;took' {
            [CompletionResult]::new('--year', '--year', [CompletionResultType]::ParameterName, 'Those finished in this year')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book;learn' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--yes', '--yes', [CompletionResultType]::ParameterName, 'Write it into knots/samples.toml')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;summary' {
            [CompletionResult]::new('--year', '--year', [CompletionResultType]::ParameterName, 'One year; all if not given')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;book;check' {
            [CompletionResult]::new('--seal', '--seal', [CompletionResultType]::ParameterName, 'A seal that was written down: say whether the book still begins with all that was in it then')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;export' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;import' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;backup' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;forget' {
            [CompletionResult]::new('--also', '--also', [CompletionResultType]::ParameterName, 'A word that is to be blanked as well; may be given several times')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'Work as of this day; today if not given')
            [CompletionResult]::new('--yes', '--yes', [CompletionResultType]::ParameterName, 'Do it, and don''t ask')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;book;help' {
            [CompletionResult]::new('enquire', 'enquire', [CompletionResultType]::ParameterValue, 'Enter an enquiry that is not quoted yet')
            [CompletionResult]::new('issue', 'issue', [CompletionResultType]::ParameterValue, 'Issue a quote: give it a number, or its own next revision, and keep it as it is')
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the commissions and where they stand')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one commission whole, or a page of a quote as it was issued')
            [CompletionResult]::new('mark', 'mark', [CompletionResultType]::ParameterValue, 'Mark where a commission stands now')
            [CompletionResult]::new('pay', 'pay', [CompletionResultType]::ParameterValue, 'Enter a payment, or a refund with a minus sign')
            [CompletionResult]::new('queue', 'queue', [CompletionResultType]::ParameterValue, 'Show what is on the bench, what is next and when each will be done')
            [CompletionResult]::new('log', 'log', [CompletionResultType]::ParameterValue, 'Enter what it took: minutes, cord, what was bought')
            [CompletionResult]::new('undo', 'undo', [CompletionResultType]::ParameterValue, 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more')
            [CompletionResult]::new('start', 'start', [CompletionResultType]::ParameterValue, 'Start the timer for a commission')
            [CompletionResult]::new('stop', 'stop', [CompletionResultType]::ParameterValue, 'Stop the timer and enter its minutes')
            [CompletionResult]::new('took', 'took', [CompletionResultType]::ParameterValue, 'Show what was quoted beside what it really took, of one commission or of all that are finished')
            [CompletionResult]::new('learn', 'learn', [CompletionResultType]::ParameterValue, 'Learn pace and knots from what finished work really took')
            [CompletionResult]::new('summary', 'summary', [CompletionResultType]::ParameterValue, 'Sum up months and years for the maker''s books')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Look through the whole book: file, rows, seals, numbers, states, sums, pages')
            [CompletionResult]::new('export', 'export', [CompletionResultType]::ParameterValue, 'Write the whole book as JSON Lines')
            [CompletionResult]::new('import', 'import', [CompletionResultType]::ParameterValue, 'Read a book from JSON Lines into a shop that has none')
            [CompletionResult]::new('backup', 'backup', [CompletionResultType]::ParameterValue, 'Write a copy of the book, whole and consistent, while others may go on writing')
            [CompletionResult]::new('forget', 'forget', [CompletionResultType]::ParameterValue, 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;book;help;enquire' {
            break
        }
        'reeve;book;help;issue' {
            break
        }
        'reeve;book;help;list' {
            break
        }
        'reeve;book;help;show' {
            break
        }
        'reeve;book;help;mark' {
            break
        }
        'reeve;book;help;pay' {
            break
        }
        'reeve;book;help;queue' {
            break
        }
        'reeve;book;help;log' {
            break
        }
        'reeve;book;help;undo' {
            break
        }
        'reeve;book;help;start' {
            break
        }
        'reeve;book;help;stop' {
            break
        }
        'reeve;book;help;took' {
            break
        }
        'reeve;book;help;learn' {
            break
        }
        'reeve;book;help;summary' {
            break
        }
        'reeve;book;help;check' {
            break
        }
        'reeve;book;help;export' {
            break
        }
        'reeve;book;help;import' {
            break
        }
        'reeve;book;help;backup' {
            break
        }
        'reeve;book;help;forget' {
            break
        }
        'reeve;book;help;help' {
            break
        }
        'reeve;knots' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the knots at hand, the shop''s own with them')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from')
            [CompletionResult]::new('chart', 'chart', [CompletionResultType]::ParameterValue, 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes')
            [CompletionResult]::new('tighten', 'tighten', [CompletionResultType]::ParameterValue, 'Tighten a drawn knot: compute from its path what it takes and how far it rises')
            [CompletionResult]::new('sample', 'sample', [CompletionResultType]::ParameterValue, 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed')
            [CompletionResult]::new('hand', 'hand', [CompletionResultType]::ParameterValue, 'Show what the samples say: give of cords, factors of knots, pace and pull')
            [CompletionResult]::new('admit', 'admit', [CompletionResultType]::ParameterValue, 'Take a library of computed knots into a shop, after probing it and showing what it declares')
            [CompletionResult]::new('dismiss', 'dismiss', [CompletionResultType]::ParameterValue, 'Take a library out of a shop')
            [CompletionResult]::new('probe', 'probe', [CompletionResultType]::ParameterValue, 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author')
            [CompletionResult]::new('begin', 'begin', [CompletionResultType]::ParameterValue, 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Read a knot file and report every fault')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;knots;list' {
            [CompletionResult]::new('--kind', '--kind', [CompletionResultType]::ParameterName, 'Only those of this use')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;knots;show' {
            [CompletionResult]::new('--cord', '--cord', [CompletionResultType]::ParameterName, 'Thickness of the cord, in mm')
            [CompletionResult]::new('--core', '--core', [CompletionResultType]::ParameterName, 'Core legs in one column; as few as the knot allows, but two if it can, when not given')
            [CompletionResult]::new('--rod', '--rod', [CompletionResultType]::ParameterName, 'Thickness of a rod or ring it is tied on, in mm, in place of core legs')
            [CompletionResult]::new('--working', '--working', [CompletionResultType]::ParameterName, 'Working legs in one knot, where that may differ')
            [CompletionResult]::new('--give', '--give', [CompletionResultType]::ParameterName, 'How much the cord gives: from 0 to 0.2, or `hard`')
            [CompletionResult]::new('--set', '--set', [CompletionResultType]::ParameterName, 'A parameter of the knot: a number, or a length such as 8cm')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--out', '--out', [CompletionResultType]::ParameterName, 'Write it into this file, not to standard output')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('--replace', '--replace', [CompletionResultType]::ParameterName, 'Write the file anew if it is there')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;knots;chart' {
            [CompletionResult]::new('--kind', '--kind', [CompletionResultType]::ParameterName, 'Only those of this use')
            [CompletionResult]::new('--cord', '--cord', [CompletionResultType]::ParameterName, 'Thickness of the cord, in mm')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--out', '--out', [CompletionResultType]::ParameterName, 'Write it into this file, not to standard output')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('--replace', '--replace', [CompletionResultType]::ParameterName, 'Write the file anew if it is there')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;tighten' {
            [CompletionResult]::new('--cord', '--cord', [CompletionResultType]::ParameterName, 'Thickness of the cord, in mm')
            [CompletionResult]::new('--give', '--give', [CompletionResultType]::ParameterName, 'How much the cord gives: from 0 to 0.2, or `hard`')
            [CompletionResult]::new('--core', '--core', [CompletionResultType]::ParameterName, 'Core legs in one column; as few as the knot allows, but two if it can, when not given')
            [CompletionResult]::new('--rod', '--rod', [CompletionResultType]::ParameterName, 'Thickness of a rod or ring it is tied on, in mm, in place of core legs')
            [CompletionResult]::new('--working', '--working', [CompletionResultType]::ParameterName, 'Working legs in one knot, where that may differ')
            [CompletionResult]::new('--into', '--into', [CompletionResultType]::ParameterName, 'Keep them in this folder')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--every', '--every', [CompletionResultType]::ParameterName, 'All knots at hand that are drawn')
            [CompletionResult]::new('--keep', '--keep', [CompletionResultType]::ParameterName, 'Tighten it round every core it may have, and keep the table and the shape beside its file')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;knots;sample' {
            [CompletionResult]::new('--cord', '--cord', [CompletionResultType]::ParameterName, 'The cord, by its name in the store; core legs are of the same cord')
            [CompletionResult]::new('--knot', '--knot', [CompletionResultType]::ParameterName, 'The knot, by its name or another name the trade uses')
            [CompletionResult]::new('--tied', '--tied', [CompletionResultType]::ParameterName, 'How many were tied, one after the other')
            [CompletionResult]::new('--core', '--core', [CompletionResultType]::ParameterName, 'Core legs; two, or as near to two as the knot allows, when not given')
            [CompletionResult]::new('--rod', '--rod', [CompletionResultType]::ParameterName, 'Thickness of a round rod or ring it was tied on, in place of core legs')
            [CompletionResult]::new('--working', '--working', [CompletionResultType]::ParameterName, 'Working legs in one knot, where that may differ')
            [CompletionResult]::new('--set', '--set', [CompletionResultType]::ParameterName, 'A parameter of the knot: a number, or a length such as 8cm')
            [CompletionResult]::new('--before', '--before', [CompletionResultType]::ParameterName, 'One working leg before the first knot, such as "150 cm"')
            [CompletionResult]::new('--after', '--after', [CompletionResultType]::ParameterName, 'What is left of the same leg below the last knot')
            [CompletionResult]::new('--made', '--made', [CompletionResultType]::ParameterName, 'The length made, from the top of the first knot to the foot of the last')
            [CompletionResult]::new('--minutes', '--minutes', [CompletionResultType]::ParameterName, 'Minutes that tying them took')
            [CompletionResult]::new('--on', '--on', [CompletionResultType]::ParameterName, 'When they were tied')
            [CompletionResult]::new('--note', '--note', [CompletionResultType]::ParameterName, 'A remark')
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--only-show', '--only-show', [CompletionResultType]::ParameterName, 'Show what it would change, and write nothing')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;hand' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--as', '--as', [CompletionResultType]::ParameterName, 'What it is written as')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help (see more with ''--help'')')
            break
        }
        'reeve;knots;admit' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--yes', '--yes', [CompletionResultType]::ParameterName, 'Don''t ask')
            [CompletionResult]::new('--unguarded', '--unguarded', [CompletionResultType]::ParameterName, 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;dismiss' {
            [CompletionResult]::new('--shop', '--shop', [CompletionResultType]::ParameterName, 'The shop''s folder, or one inside it; the current folder if not given')
            [CompletionResult]::new('--demo', '--demo', [CompletionResultType]::ParameterName, 'Use the starter shop inside the program')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;probe' {
            [CompletionResult]::new('--unguarded', '--unguarded', [CompletionResultType]::ParameterName, 'Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back')
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;begin' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;check' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;knots;help' {
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the knots at hand, the shop''s own with them')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from')
            [CompletionResult]::new('chart', 'chart', [CompletionResultType]::ParameterValue, 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes')
            [CompletionResult]::new('tighten', 'tighten', [CompletionResultType]::ParameterValue, 'Tighten a drawn knot: compute from its path what it takes and how far it rises')
            [CompletionResult]::new('sample', 'sample', [CompletionResultType]::ParameterValue, 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed')
            [CompletionResult]::new('hand', 'hand', [CompletionResultType]::ParameterValue, 'Show what the samples say: give of cords, factors of knots, pace and pull')
            [CompletionResult]::new('admit', 'admit', [CompletionResultType]::ParameterValue, 'Take a library of computed knots into a shop, after probing it and showing what it declares')
            [CompletionResult]::new('dismiss', 'dismiss', [CompletionResultType]::ParameterValue, 'Take a library out of a shop')
            [CompletionResult]::new('probe', 'probe', [CompletionResultType]::ParameterValue, 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author')
            [CompletionResult]::new('begin', 'begin', [CompletionResultType]::ParameterValue, 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Read a knot file and report every fault')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;knots;help;list' {
            break
        }
        'reeve;knots;help;show' {
            break
        }
        'reeve;knots;help;chart' {
            break
        }
        'reeve;knots;help;tighten' {
            break
        }
        'reeve;knots;help;sample' {
            break
        }
        'reeve;knots;help;hand' {
            break
        }
        'reeve;knots;help;admit' {
            break
        }
        'reeve;knots;help;dismiss' {
            break
        }
        'reeve;knots;help;probe' {
            break
        }
        'reeve;knots;help;begin' {
            break
        }
        'reeve;knots;help;check' {
            break
        }
        'reeve;knots;help;help' {
            break
        }
        'reeve;schema' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;completions' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;man' {
            [CompletionResult]::new('-h', '-h', [CompletionResultType]::ParameterName, 'Print help')
            [CompletionResult]::new('--help', '--help', [CompletionResultType]::ParameterName, 'Print help')
            break
        }
        'reeve;help' {
            [CompletionResult]::new('begin', 'begin', [CompletionResultType]::ParameterValue, 'Write the starter shop into a new or empty folder')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Read a whole shop and report every fault of every file')
            [CompletionResult]::new('takeoff', 'takeoff', [CompletionResultType]::ParameterValue, 'Work out what one piece of a design needs: cut list, knots, hours, put-ups')
            [CompletionResult]::new('costing', 'costing', [CompletionResultType]::ParameterValue, 'Cost and price a commission, for the maker''s eyes only')
            [CompletionResult]::new('bench', 'bench', [CompletionResultType]::ParameterValue, 'Write the bench sheet of a commission: what to buy, cut and tie')
            [CompletionResult]::new('quote', 'quote', [CompletionResultType]::ParameterValue, 'Write the quote that the client signs')
            [CompletionResult]::new('compare', 'compare', [CompletionResultType]::ParameterValue, 'Compare designs and their sizes: what one of each costs, brings in and earns for an hour at the bench')
            [CompletionResult]::new('weigh', 'weigh', [CompletionResultType]::ParameterValue, 'Weigh one design: what its price is made of, what moves its margin, how sure its hours are')
            [CompletionResult]::new('mix', 'mix', [CompletionResultType]::ParameterValue, 'Find the best mix of designs for a week''s bench hours, and what one more hour would bring')
            [CompletionResult]::new('book', 'book', [CompletionResultType]::ParameterValue, 'Keep the order book: from enquiry to what it really took')
            [CompletionResult]::new('knots', 'knots', [CompletionResultType]::ParameterValue, 'Look at the knots: list them, show one, chart them all, tighten one, check a file, add a sample')
            [CompletionResult]::new('schema', 'schema', [CompletionResultType]::ParameterValue, 'Print the JSON Schema of a kind of file, for an editor to complete keys')
            [CompletionResult]::new('completions', 'completions', [CompletionResultType]::ParameterValue, 'Print completions for a shell')
            [CompletionResult]::new('man', 'man', [CompletionResultType]::ParameterValue, 'Print the manual page')
            [CompletionResult]::new('help', 'help', [CompletionResultType]::ParameterValue, 'Print this message or the help of the given subcommand(s)')
            break
        }
        'reeve;help;begin' {
            break
        }
        'reeve;help;check' {
            break
        }
        'reeve;help;takeoff' {
            break
        }
        'reeve;help;costing' {
            break
        }
        'reeve;help;bench' {
            break
        }
        'reeve;help;quote' {
            break
        }
        'reeve;help;compare' {
            break
        }
        'reeve;help;weigh' {
            break
        }
        'reeve;help;mix' {
            break
        }
        'reeve;help;book' {
            [CompletionResult]::new('enquire', 'enquire', [CompletionResultType]::ParameterValue, 'Enter an enquiry that is not quoted yet')
            [CompletionResult]::new('issue', 'issue', [CompletionResultType]::ParameterValue, 'Issue a quote: give it a number, or its own next revision, and keep it as it is')
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the commissions and where they stand')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one commission whole, or a page of a quote as it was issued')
            [CompletionResult]::new('mark', 'mark', [CompletionResultType]::ParameterValue, 'Mark where a commission stands now')
            [CompletionResult]::new('pay', 'pay', [CompletionResultType]::ParameterValue, 'Enter a payment, or a refund with a minus sign')
            [CompletionResult]::new('queue', 'queue', [CompletionResultType]::ParameterValue, 'Show what is on the bench, what is next and when each will be done')
            [CompletionResult]::new('log', 'log', [CompletionResultType]::ParameterValue, 'Enter what it took: minutes, cord, what was bought')
            [CompletionResult]::new('undo', 'undo', [CompletionResultType]::ParameterValue, 'Undo an entry that was a slip: it stays in the book, struck out, and counts no more')
            [CompletionResult]::new('start', 'start', [CompletionResultType]::ParameterValue, 'Start the timer for a commission')
            [CompletionResult]::new('stop', 'stop', [CompletionResultType]::ParameterValue, 'Stop the timer and enter its minutes')
            [CompletionResult]::new('took', 'took', [CompletionResultType]::ParameterValue, 'Show what was quoted beside what it really took, of one commission or of all that are finished')
            [CompletionResult]::new('learn', 'learn', [CompletionResultType]::ParameterValue, 'Learn pace and knots from what finished work really took')
            [CompletionResult]::new('summary', 'summary', [CompletionResultType]::ParameterValue, 'Sum up months and years for the maker''s books')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Look through the whole book: file, rows, seals, numbers, states, sums, pages')
            [CompletionResult]::new('export', 'export', [CompletionResultType]::ParameterValue, 'Write the whole book as JSON Lines')
            [CompletionResult]::new('import', 'import', [CompletionResultType]::ParameterValue, 'Read a book from JSON Lines into a shop that has none')
            [CompletionResult]::new('backup', 'backup', [CompletionResultType]::ParameterValue, 'Write a copy of the book, whole and consistent, while others may go on writing')
            [CompletionResult]::new('forget', 'forget', [CompletionResultType]::ParameterValue, 'Blank a client''s name and address, and what you typed of them, in the whole book; numbers and sums stay')
            break
        }
        'reeve;help;book;enquire' {
            break
        }
        'reeve;help;book;issue' {
            break
        }
        'reeve;help;book;list' {
            break
        }
        'reeve;help;book;show' {
            break
        }
        'reeve;help;book;mark' {
            break
        }
        'reeve;help;book;pay' {
            break
        }
        'reeve;help;book;queue' {
            break
        }
        'reeve;help;book;log' {
            break
        }
        'reeve;help;book;undo' {
            break
        }
        'reeve;help;book;start' {
            break
        }
        'reeve;help;book;stop' {
            break
        }
        'reeve;help;book;took' {
            break
        }
        'reeve;help;book;learn' {
            break
        }
        'reeve;help;book;summary' {
            break
        }
        'reeve;help;book;check' {
            break
        }
        'reeve;help;book;export' {
            break
        }
        'reeve;help;book;import' {
            break
        }
        'reeve;help;book;backup' {
            break
        }
        'reeve;help;book;forget' {
            break
        }
        'reeve;help;knots' {
            [CompletionResult]::new('list', 'list', [CompletionResultType]::ParameterValue, 'List the knots at hand, the shop''s own with them')
            [CompletionResult]::new('show', 'show', [CompletionResultType]::ParameterValue, 'Show one knot: what it takes, how far it rises, how long it lasts, and where each figure comes from')
            [CompletionResult]::new('chart', 'chart', [CompletionResultType]::ParameterValue, 'Write the chart of the knots, to pin to a wall: a page with each one''s drawing and what it takes')
            [CompletionResult]::new('tighten', 'tighten', [CompletionResultType]::ParameterValue, 'Tighten a drawn knot: compute from its path what it takes and how far it rises')
            [CompletionResult]::new('sample', 'sample', [CompletionResultType]::ParameterValue, 'Add a sample: a knot tied a few times for trial, measured, and perhaps timed')
            [CompletionResult]::new('hand', 'hand', [CompletionResultType]::ParameterValue, 'Show what the samples say: give of cords, factors of knots, pace and pull')
            [CompletionResult]::new('admit', 'admit', [CompletionResultType]::ParameterValue, 'Take a library of computed knots into a shop, after probing it and showing what it declares')
            [CompletionResult]::new('dismiss', 'dismiss', [CompletionResultType]::ParameterValue, 'Take a library out of a shop')
            [CompletionResult]::new('probe', 'probe', [CompletionResultType]::ParameterValue, 'Hold a library of computed knots to what it declares, over the whole range of every knot; for its author')
            [CompletionResult]::new('begin', 'begin', [CompletionResultType]::ParameterValue, 'Write a small library of computed knots to begin one''s own from, in Rust and in C, into a new or empty folder')
            [CompletionResult]::new('check', 'check', [CompletionResultType]::ParameterValue, 'Read a knot file and report every fault')
            break
        }
        'reeve;help;knots;list' {
            break
        }
        'reeve;help;knots;show' {
            break
        }
        'reeve;help;knots;chart' {
            break
        }
        'reeve;help;knots;tighten' {
            break
        }
        'reeve;help;knots;sample' {
            break
        }
        'reeve;help;knots;hand' {
            break
        }
        'reeve;help;knots;admit' {
            break
        }
        'reeve;help;knots;dismiss' {
            break
        }
        'reeve;help;knots;probe' {
            break
        }
        'reeve;help;knots;begin' {
            break
        }
        'reeve;help;knots;check' {
            break
        }
        'reeve;help;schema' {
            break
        }
        'reeve;help;completions' {
            break
        }
        'reeve;help;man' {
            break
        }
        'reeve;help;help' {
            break
        }
    })

    $completions.Where{ $_.CompletionText -like "$wordToComplete*" } |
        Sort-Object -Property ListItemText
}
