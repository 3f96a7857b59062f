#compdef reeve

autoload -U is-at-least

_reeve() {
    typeset -A opt_args
    typeset -a _arguments_options
    local ret=1

    if is-at-least 5.2; then
        _arguments_options=(-s -S -C)
    else
        _arguments_options=(-s -C)
    fi

    local context curcontext="$curcontext" state line
    _arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
'-V[Print version]' \
'--version[Print version]' \
":: :_reeve_commands" \
"*::: :->reeve" \
&& ret=0
    case $state in
    (reeve)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-command-$line[1]:"
        case $line[1] in
            (begin)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
':dir -- The folder; made if it is not there:_files' \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(takeoff)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::design -- The design\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(costing)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'--confidence=[How sure the hours of its prices are, such as 80%\: four times in five they suffice]:PERCENT:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::commission -- The commission\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(bench)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'--confidence=[How sure the hours of its prices are, such as 80%\: four times in five they suffice]:PERCENT:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::commission -- The commission\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(quote)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'--confidence=[How sure the hours of its prices are, such as 80%\: four times in five they suffice]:PERCENT:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'--out=[Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR]:DIR:_files' \
'--own=[Write what is for the maker'\''s eyes (costing and bench sheet) into a folder of its own in DIR]:DIR:_files' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::commission -- The commission\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(compare)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'*--price=[What buyers pay for a design, or for a size of it, in place of what its file says]:DESIGN[:SIZE]=AMOUNT:_default' \
'*--what-if=[An input otherwise than in the shop, such as wage=+10%; may be given several times]:INPUT=CHANGE:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--sort=[The column it is sorted by, the greatest first]:COLUMN:(design size cord put-ups weight hours material labour overhead cost lowest price before-fees fees margin margin-percent per-hour contribution market market-margin market-percent market-per-hour weekly)' \
'*--where=[Show only such rows\: a column, a sign and a figure, such as hours<3; may be given several times]:CONDITION:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
csv\:"Comma-separated values, for a spreadsheet"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'*::designs -- The designs; all of the shop if none is named:_default' \
&& ret=0
;;
(weigh)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'--price=[The price it is weighed at; what buyers pay if not given, or else the price by the shop'\''s aim]:AMOUNT:_default' \
'*--what-if=[An input otherwise than in the shop, such as wage=+10%; may be given several times]:INPUT=CHANGE:_default' \
'--prices=[The prices to tell what it comes to at, such as 80..140 or 80..140/2.50]:FROM..TO[/STEP]:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--as=[What it is written as; csv holds the prices alone]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
csv\:"Comma-separated values, for a spreadsheet"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::design -- The design\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(mix)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'*--price=[What buyers pay for a design, or for a size of it, in place of what its file says]:DESIGN[:SIZE]=AMOUNT:_default' \
'*--what-if=[An input otherwise than in the shop, such as wage=+10%; may be given several times]:INPUT=CHANGE:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--hours=[Bench hours in the week; those of shop.toml if not given]:HOURS:_default' \
'*--demand=[The most of a design, or of a size of it, that find a buyer in a week, in place of what its file says]:DESIGN[:SIZE]=PIECES:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'*::designs -- The designs; all of the shop if none is named:_default' \
&& ret=0
;;
(book)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
":: :_reeve__subcmd__book_commands" \
"*::: :->book" \
&& ret=0

    case $state in
    (book)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-book-command-$line[1]:"
        case $line[1] in
            (enquire)
_arguments "${_arguments_options[@]}" : \
'--note=[A remark]:NOTE:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- The commission\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(issue)
_arguments "${_arguments_options[@]}" : \
'--size=[One of the design'\''s sizes]:SIZE:_default' \
'*--measure=[A measure in place of the design'\''s, such as drop=120cm; may be given several times]:NAME=FIGURE:_default' \
'--confidence=[How sure the hours of its prices are, such as 80%\: four times in five they suffice]:PERCENT:_default' \
'--note=[A remark]:NOTE:_default' \
'--out=[Write what the client gets (the quote as HTML, text and JSON) into a folder of its own in DIR]:DIR:_files' \
'--own=[Write what is for the maker'\''s eyes (costing and bench sheet) into a folder of its own in DIR]:DIR:_files' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- The commission\: its file'\''s name without .toml, or a path:_default' \
&& ret=0
;;
(list)
_arguments "${_arguments_options[@]}" : \
'*--stands=[Only those that stand so; may be given several times]:STATE:(enquiry quoted lapsed accepted declined on-bench finished delivered paid cancelled)' \
'--client=[Only those of a client whose name holds these letters]:LETTERS:_default' \
'--year=[Only those first entered in this year]:YEAR:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
csv\:"Comma-separated values, for a spreadsheet"
json\:"For other programs"))' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
'--page=[A page or document as it was issued, such as quote.html or costing.json]:NAME:_default' \
'--revision=[Of this revision; the last if not given]:REVISION:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
':commission -- Its number, or its file'\''s name:_default' \
&& ret=0
;;
(mark)
_arguments "${_arguments_options[@]}" : \
'--note=[A remark]:NOTE:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- Its number, or its file'\''s name:_default' \
':state -- Where it stands now:(enquiry quoted lapsed accepted declined on-bench finished delivered paid cancelled)' \
&& ret=0
;;
(pay)
_arguments "${_arguments_options[@]}" : \
'--note=[A remark]:NOTE:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- Its number, or its file'\''s name:_default' \
':amount -- How much:_default' \
&& ret=0
;;
(queue)
_arguments "${_arguments_options[@]}" : \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
&& ret=0
;;
(log)
_arguments "${_arguments_options[@]}" : \
'--minutes=[Minutes at the bench]:MINUTES:_default' \
'--step=[At which step]:STEP:_default' \
'*--cord=[Cord that was cut, in metres; may be given several times]:CORD=METRES:_default' \
'*--bought=[Something bought for it; may be given several times]:WHAT=AMOUNT:_default' \
'--note=[A remark]:NOTE:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- Its number, or its file'\''s name:_default' \
&& ret=0
;;
(undo)
_arguments "${_arguments_options[@]}" : \
'--why=[Why]:WORDS:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--ahead[Allow a day after today]' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- Its number, or its file'\''s name:_default' \
':entry -- The entry'\''s number:_default' \
&& ret=0
;;
(start)
_arguments "${_arguments_options[@]}" : \
'--step=[At which step]:STEP:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'-h[Print help]' \
'--help[Print help]' \
':commission -- Its number, or its file'\''s name:_default' \
&& ret=0
;;
(stop)
_arguments "${_arguments_options[@]}" : \
'(--drop)--note=[A remark]:NOTE:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--drop[Drop the timer, and enter nothing]' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(took)
_arguments "${_arguments_options[@]}" : \
'()--year=[Those finished in this year]:YEAR:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
json\:"For other programs"))' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::commission -- Its number, or its file'\''s name; all finished ones together if not given:_default' \
&& ret=0
;;
(learn)
_arguments "${_arguments_options[@]}" : \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--yes[Write it into knots/samples.toml]' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(summary)
_arguments "${_arguments_options[@]}" : \
'--year=[One year; all if not given]:YEAR:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
csv\:"Comma-separated values, for a spreadsheet"
json\:"For other programs"))' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
'--seal=[A seal that was written down\: say whether the book still begins with all that was in it then]:SEAL:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(export)
_arguments "${_arguments_options[@]}" : \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'-h[Print help]' \
'--help[Print help]' \
':file -- The file; it must not exist yet:_files' \
&& ret=0
;;
(import)
_arguments "${_arguments_options[@]}" : \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'-h[Print help]' \
'--help[Print help]' \
':file -- The file:_files' \
&& ret=0
;;
(backup)
_arguments "${_arguments_options[@]}" : \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'-h[Print help]' \
'--help[Print help]' \
':file -- The file; it must not exist yet:_files' \
&& ret=0
;;
(forget)
_arguments "${_arguments_options[@]}" : \
'*--also=[A word that is to be blanked as well; may be given several times]:WORD:_default' \
'--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--on=[Work as of this day; today if not given]:YYYY-MM-DD:_default' \
'--yes[Do it, and don'\''t ask]' \
'-h[Print help]' \
'--help[Print help]' \
':client -- The name, as it stands in the commission, or the number of one of their commissions:_default' \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
":: :_reeve__subcmd__book__subcmd__help_commands" \
"*::: :->help" \
&& ret=0

    case $state in
    (help)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-book-help-command-$line[1]:"
        case $line[1] in
            (enquire)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(issue)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(list)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(mark)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(pay)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(queue)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(log)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(undo)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(start)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(stop)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(took)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(learn)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(summary)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(export)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(import)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(backup)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(forget)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
        esac
    ;;
esac
;;
        esac
    ;;
esac
;;
(knots)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
":: :_reeve__subcmd__knots_commands" \
"*::: :->knots" \
&& ret=0

    case $state in
    (knots)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-knots-command-$line[1]:"
        case $line[1] in
            (list)
_arguments "${_arguments_options[@]}" : \
'--kind=[Only those of this use]:KIND:(sennit row mounting wrap single)' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::word -- Only those with this word in a name or other name:_default' \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
'--cord=[Thickness of the cord, in mm]:MM:_default' \
'(--rod)--core=[Core legs in one column; as few as the knot allows, but two if it can, when not given]:N:_default' \
'--rod=[Thickness of a rod or ring it is tied on, in mm, in place of core legs]:MM:_default' \
'--working=[Working legs in one knot, where that may differ]:N:_default' \
'--give=[How much the cord gives\: from 0 to 0.2, or \`hard\`]:GIVE:_default' \
'*--set=[A parameter of the knot\: a number, or a length such as 8cm]:NAME=VALUE:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
html\:"One self-contained page"
svg\:"The drawing alone"
json\:"For other programs"))' \
'--out=[Write it into this file, not to standard output]:FILE:_files' \
'--demo[Use the starter shop inside the program]' \
'--replace[Write the file anew if it is there]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
':knot -- The knot\: its name or another name the trade uses:_default' \
&& ret=0
;;
(chart)
_arguments "${_arguments_options[@]}" : \
'--kind=[Only those of this use]:KIND:(sennit row mounting wrap single)' \
'--cord=[Thickness of the cord, in mm]:MM:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--out=[Write it into this file, not to standard output]:FILE:_files' \
'--demo[Use the starter shop inside the program]' \
'--replace[Write the file anew if it is there]' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(tighten)
_arguments "${_arguments_options[@]}" : \
'--cord=[Thickness of the cord, in mm]:MM:_default' \
'--give=[How much the cord gives\: from 0 to 0.2, or \`hard\`]:GIVE:_default' \
'(--rod)--core=[Core legs in one column; as few as the knot allows, but two if it can, when not given]:N:_default' \
'--rod=[Thickness of a rod or ring it is tied on, in mm, in place of core legs]:MM:_default' \
'--working=[Working legs in one knot, where that may differ]:N:_default' \
'(--core --rod --working --give --cord)--into=[Keep them in this folder]:DIR:_files' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
json\:"For other programs"))' \
'()--every[All knots at hand that are drawn]' \
'(--core --rod --working --give --cord)--keep[Tighten it round every core it may have, and keep the table and the shape beside its file]' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
'::knot -- The knot\: its name, or its file:_default' \
&& ret=0
;;
(sample)
_arguments "${_arguments_options[@]}" : \
'--cord=[The cord, by its name in the store; core legs are of the same cord]:NAME:_default' \
'--knot=[The knot, by its name or another name the trade uses]:NAME:_default' \
'--tied=[How many were tied, one after the other]:N:_default' \
'--core=[Core legs; two, or as near to two as the knot allows, when not given]:N:_default' \
'(--core)--rod=[Thickness of a round rod or ring it was tied on, in place of core legs]:LENGTH:_default' \
'--working=[Working legs in one knot, where that may differ]:N:_default' \
'*--set=[A parameter of the knot\: a number, or a length such as 8cm]:NAME=VALUE:_default' \
'--before=[One working leg before the first knot, such as "150 cm"]:LENGTH:_default' \
'--after=[What is left of the same leg below the last knot]:LENGTH:_default' \
'--made=[The length made, from the top of the first knot to the foot of the last]:LENGTH:_default' \
'--minutes=[Minutes that tying them took]:MINUTES:_default' \
'--on=[When they were tied]:YYYY-MM-DD:_default' \
'--note=[A remark]:WORDS:_default' \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--only-show[Show what it would change, and write nothing]' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(hand)
_arguments "${_arguments_options[@]}" : \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--as=[What it is written as]:FORM:((text\:"Plain text, 80 columns"
json\:"For other programs"))' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help (see more with '\''--help'\'')]' \
'--help[Print help (see more with '\''--help'\'')]' \
&& ret=0
;;
(admit)
_arguments "${_arguments_options[@]}" : \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--yes[Don'\''t ask]' \
'--unguarded[Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back]' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help]' \
'--help[Print help]' \
':file -- The library:_files' \
&& ret=0
;;
(dismiss)
_arguments "${_arguments_options[@]}" : \
'(--demo)--shop=[The shop'\''s folder, or one inside it; the current folder if not given]:DIR:_files' \
'--demo[Use the starter shop inside the program]' \
'-h[Print help]' \
'--help[Print help]' \
':library -- The library'\''s name:_default' \
&& ret=0
;;
(probe)
_arguments "${_arguments_options[@]}" : \
'--unguarded[Let it run even where the system does not hold it back; there it can do whatever you can. Linux holds it back]' \
'-h[Print help]' \
'--help[Print help]' \
':file -- The library:_files' \
&& ret=0
;;
(begin)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
':dir -- The folder; made if it is not there:_files' \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
':file -- The file:_files' \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
":: :_reeve__subcmd__knots__subcmd__help_commands" \
"*::: :->help" \
&& ret=0

    case $state in
    (help)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-knots-help-command-$line[1]:"
        case $line[1] in
            (list)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(chart)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(tighten)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(sample)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(hand)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(admit)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(dismiss)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(probe)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(begin)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
        esac
    ;;
esac
;;
        esac
    ;;
esac
;;
(schema)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
':kind -- The kind of file:(shop cords fittings design commission knot samples quote-json takeoff-json bench-json costing-json compare-json weigh-json mix-json book-list-json book-show-json book-queue-json book-took-json book-summary-json knot-json tight-json hand-json)' \
&& ret=0
;;
(completions)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
':shell -- The shell:(bash elvish fish powershell zsh)' \
&& ret=0
;;
(man)
_arguments "${_arguments_options[@]}" : \
'-h[Print help]' \
'--help[Print help]' \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
":: :_reeve__subcmd__help_commands" \
"*::: :->help" \
&& ret=0

    case $state in
    (help)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-help-command-$line[1]:"
        case $line[1] in
            (begin)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(takeoff)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(costing)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(bench)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(quote)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(compare)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(weigh)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(mix)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(book)
_arguments "${_arguments_options[@]}" : \
":: :_reeve__subcmd__help__subcmd__book_commands" \
"*::: :->book" \
&& ret=0

    case $state in
    (book)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-help-book-command-$line[1]:"
        case $line[1] in
            (enquire)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(issue)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(list)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(mark)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(pay)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(queue)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(log)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(undo)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(start)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(stop)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(took)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(learn)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(summary)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(export)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(import)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(backup)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(forget)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
        esac
    ;;
esac
;;
(knots)
_arguments "${_arguments_options[@]}" : \
":: :_reeve__subcmd__help__subcmd__knots_commands" \
"*::: :->knots" \
&& ret=0

    case $state in
    (knots)
        words=($line[1] "${words[@]}")
        (( CURRENT += 1 ))
        curcontext="${curcontext%:*:*}:reeve-help-knots-command-$line[1]:"
        case $line[1] in
            (list)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(show)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(chart)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(tighten)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(sample)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(hand)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(admit)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(dismiss)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(probe)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(begin)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(check)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
        esac
    ;;
esac
;;
(schema)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(completions)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(man)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
(help)
_arguments "${_arguments_options[@]}" : \
&& ret=0
;;
        esac
    ;;
esac
;;
        esac
    ;;
esac
}

(( $+functions[_reeve_commands] )) ||
_reeve_commands() {
    local commands; commands=(
'begin:Write the starter shop into a new or empty folder' \
'check:Read a whole shop and report every fault of every file' \
'takeoff:Work out what one piece of a design needs\: cut list, knots, hours, put-ups' \
'costing:Cost and price a commission, for the maker'\''s eyes only' \
'bench:Write the bench sheet of a commission\: what to buy, cut and tie' \
'quote:Write the quote that the client signs' \
'compare:Compare designs and their sizes\: what one of each costs, brings in and earns for an hour at the bench' \
'weigh:Weigh one design\: what its price is made of, what moves its margin, how sure its hours are' \
'mix:Find the best mix of designs for a week'\''s bench hours, and what one more hour would bring' \
'book:Keep the order book\: from enquiry to what it really took' \
'knots:Look at the knots\: list them, show one, chart them all, tighten one, check a file, add a sample' \
'schema:Print the JSON Schema of a kind of file, for an editor to complete keys' \
'completions:Print completions for a shell' \
'man:Print the manual page' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve commands' commands "$@"
}
(( $+functions[_reeve__subcmd__begin_commands] )) ||
_reeve__subcmd__begin_commands() {
    local commands; commands=()
    _describe -t commands 'reeve begin commands' commands "$@"
}
(( $+functions[_reeve__subcmd__bench_commands] )) ||
_reeve__subcmd__bench_commands() {
    local commands; commands=()
    _describe -t commands 'reeve bench commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book_commands] )) ||
_reeve__subcmd__book_commands() {
    local commands; commands=(
'enquire:Enter an enquiry that is not quoted yet' \
'issue:Issue a quote\: give it a number, or its own next revision, and keep it as it is' \
'list:List the commissions and where they stand' \
'show:Show one commission whole, or a page of a quote as it was issued' \
'mark:Mark where a commission stands now' \
'pay:Enter a payment, or a refund with a minus sign' \
'queue:Show what is on the bench, what is next and when each will be done' \
'log:Enter what it took\: minutes, cord, what was bought' \
'undo:Undo an entry that was a slip\: it stays in the book, struck out, and counts no more' \
'start:Start the timer for a commission' \
'stop:Stop the timer and enter its minutes' \
'took:Show what was quoted beside what it really took, of one commission or of all that are finished' \
'learn:Learn pace and knots from what finished work really took' \
'summary:Sum up months and years for the maker'\''s books' \
'check:Look through the whole book\: file, rows, seals, numbers, states, sums, pages' \
'export:Write the whole book as JSON Lines' \
'import:Read a book from JSON Lines into a shop that has none' \
'backup:Write a copy of the book, whole and consistent, while others may go on writing' \
'forget:Blank a client'\''s name and address, and what you typed of them, in the whole book; numbers and sums stay' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve book commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__backup_commands] )) ||
_reeve__subcmd__book__subcmd__backup_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book backup commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__check_commands] )) ||
_reeve__subcmd__book__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__enquire_commands] )) ||
_reeve__subcmd__book__subcmd__enquire_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book enquire commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__export_commands] )) ||
_reeve__subcmd__book__subcmd__export_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book export commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__forget_commands] )) ||
_reeve__subcmd__book__subcmd__forget_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book forget commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help_commands] )) ||
_reeve__subcmd__book__subcmd__help_commands() {
    local commands; commands=(
'enquire:Enter an enquiry that is not quoted yet' \
'issue:Issue a quote\: give it a number, or its own next revision, and keep it as it is' \
'list:List the commissions and where they stand' \
'show:Show one commission whole, or a page of a quote as it was issued' \
'mark:Mark where a commission stands now' \
'pay:Enter a payment, or a refund with a minus sign' \
'queue:Show what is on the bench, what is next and when each will be done' \
'log:Enter what it took\: minutes, cord, what was bought' \
'undo:Undo an entry that was a slip\: it stays in the book, struck out, and counts no more' \
'start:Start the timer for a commission' \
'stop:Stop the timer and enter its minutes' \
'took:Show what was quoted beside what it really took, of one commission or of all that are finished' \
'learn:Learn pace and knots from what finished work really took' \
'summary:Sum up months and years for the maker'\''s books' \
'check:Look through the whole book\: file, rows, seals, numbers, states, sums, pages' \
'export:Write the whole book as JSON Lines' \
'import:Read a book from JSON Lines into a shop that has none' \
'backup:Write a copy of the book, whole and consistent, while others may go on writing' \
'forget:Blank a client'\''s name and address, and what you typed of them, in the whole book; numbers and sums stay' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve book help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__backup_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__backup_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help backup commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__check_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__enquire_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__enquire_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help enquire commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__export_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__export_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help export commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__forget_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__forget_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help forget commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__help_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__help_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__import_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__import_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help import commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__issue_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__issue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help issue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__learn_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__learn_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help learn commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__list_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__log_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__log_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help log commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__mark_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__mark_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help mark commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__pay_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__pay_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help pay commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__queue_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__queue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help queue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__show_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__start_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__start_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help start commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__stop_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__stop_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help stop commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__summary_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__summary_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help summary commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__took_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__took_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help took commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__help__subcmd__undo_commands] )) ||
_reeve__subcmd__book__subcmd__help__subcmd__undo_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book help undo commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__import_commands] )) ||
_reeve__subcmd__book__subcmd__import_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book import commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__issue_commands] )) ||
_reeve__subcmd__book__subcmd__issue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book issue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__learn_commands] )) ||
_reeve__subcmd__book__subcmd__learn_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book learn commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__list_commands] )) ||
_reeve__subcmd__book__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__log_commands] )) ||
_reeve__subcmd__book__subcmd__log_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book log commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__mark_commands] )) ||
_reeve__subcmd__book__subcmd__mark_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book mark commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__pay_commands] )) ||
_reeve__subcmd__book__subcmd__pay_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book pay commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__queue_commands] )) ||
_reeve__subcmd__book__subcmd__queue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book queue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__show_commands] )) ||
_reeve__subcmd__book__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__start_commands] )) ||
_reeve__subcmd__book__subcmd__start_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book start commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__stop_commands] )) ||
_reeve__subcmd__book__subcmd__stop_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book stop commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__summary_commands] )) ||
_reeve__subcmd__book__subcmd__summary_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book summary commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__took_commands] )) ||
_reeve__subcmd__book__subcmd__took_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book took commands' commands "$@"
}
(( $+functions[_reeve__subcmd__book__subcmd__undo_commands] )) ||
_reeve__subcmd__book__subcmd__undo_commands() {
    local commands; commands=()
    _describe -t commands 'reeve book undo commands' commands "$@"
}
(( $+functions[_reeve__subcmd__check_commands] )) ||
_reeve__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__compare_commands] )) ||
_reeve__subcmd__compare_commands() {
    local commands; commands=()
    _describe -t commands 'reeve compare commands' commands "$@"
}
(( $+functions[_reeve__subcmd__completions_commands] )) ||
_reeve__subcmd__completions_commands() {
    local commands; commands=()
    _describe -t commands 'reeve completions commands' commands "$@"
}
(( $+functions[_reeve__subcmd__costing_commands] )) ||
_reeve__subcmd__costing_commands() {
    local commands; commands=()
    _describe -t commands 'reeve costing commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help_commands] )) ||
_reeve__subcmd__help_commands() {
    local commands; commands=(
'begin:Write the starter shop into a new or empty folder' \
'check:Read a whole shop and report every fault of every file' \
'takeoff:Work out what one piece of a design needs\: cut list, knots, hours, put-ups' \
'costing:Cost and price a commission, for the maker'\''s eyes only' \
'bench:Write the bench sheet of a commission\: what to buy, cut and tie' \
'quote:Write the quote that the client signs' \
'compare:Compare designs and their sizes\: what one of each costs, brings in and earns for an hour at the bench' \
'weigh:Weigh one design\: what its price is made of, what moves its margin, how sure its hours are' \
'mix:Find the best mix of designs for a week'\''s bench hours, and what one more hour would bring' \
'book:Keep the order book\: from enquiry to what it really took' \
'knots:Look at the knots\: list them, show one, chart them all, tighten one, check a file, add a sample' \
'schema:Print the JSON Schema of a kind of file, for an editor to complete keys' \
'completions:Print completions for a shell' \
'man:Print the manual page' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__begin_commands] )) ||
_reeve__subcmd__help__subcmd__begin_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help begin commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__bench_commands] )) ||
_reeve__subcmd__help__subcmd__bench_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help bench commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book_commands] )) ||
_reeve__subcmd__help__subcmd__book_commands() {
    local commands; commands=(
'enquire:Enter an enquiry that is not quoted yet' \
'issue:Issue a quote\: give it a number, or its own next revision, and keep it as it is' \
'list:List the commissions and where they stand' \
'show:Show one commission whole, or a page of a quote as it was issued' \
'mark:Mark where a commission stands now' \
'pay:Enter a payment, or a refund with a minus sign' \
'queue:Show what is on the bench, what is next and when each will be done' \
'log:Enter what it took\: minutes, cord, what was bought' \
'undo:Undo an entry that was a slip\: it stays in the book, struck out, and counts no more' \
'start:Start the timer for a commission' \
'stop:Stop the timer and enter its minutes' \
'took:Show what was quoted beside what it really took, of one commission or of all that are finished' \
'learn:Learn pace and knots from what finished work really took' \
'summary:Sum up months and years for the maker'\''s books' \
'check:Look through the whole book\: file, rows, seals, numbers, states, sums, pages' \
'export:Write the whole book as JSON Lines' \
'import:Read a book from JSON Lines into a shop that has none' \
'backup:Write a copy of the book, whole and consistent, while others may go on writing' \
'forget:Blank a client'\''s name and address, and what you typed of them, in the whole book; numbers and sums stay' \
    )
    _describe -t commands 'reeve help book commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__backup_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__backup_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book backup commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__check_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__enquire_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__enquire_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book enquire commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__export_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__export_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book export commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__forget_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__forget_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book forget commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__import_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__import_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book import commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__issue_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__issue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book issue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__learn_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__learn_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book learn commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__list_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__log_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__log_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book log commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__mark_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__mark_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book mark commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__pay_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__pay_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book pay commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__queue_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__queue_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book queue commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__show_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__start_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__start_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book start commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__stop_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__stop_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book stop commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__summary_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__summary_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book summary commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__took_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__took_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book took commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__book__subcmd__undo_commands] )) ||
_reeve__subcmd__help__subcmd__book__subcmd__undo_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help book undo commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__check_commands] )) ||
_reeve__subcmd__help__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__compare_commands] )) ||
_reeve__subcmd__help__subcmd__compare_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help compare commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__completions_commands] )) ||
_reeve__subcmd__help__subcmd__completions_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help completions commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__costing_commands] )) ||
_reeve__subcmd__help__subcmd__costing_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help costing commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__help_commands] )) ||
_reeve__subcmd__help__subcmd__help_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots_commands] )) ||
_reeve__subcmd__help__subcmd__knots_commands() {
    local commands; commands=(
'list:List the knots at hand, the shop'\''s own with them' \
'show:Show one knot\: what it takes, how far it rises, how long it lasts, and where each figure comes from' \
'chart:Write the chart of the knots, to pin to a wall\: a page with each one'\''s drawing and what it takes' \
'tighten:Tighten a drawn knot\: compute from its path what it takes and how far it rises' \
'sample:Add a sample\: a knot tied a few times for trial, measured, and perhaps timed' \
'hand:Show what the samples say\: give of cords, factors of knots, pace and pull' \
'admit:Take a library of computed knots into a shop, after probing it and showing what it declares' \
'dismiss:Take a library out of a shop' \
'probe:Hold a library of computed knots to what it declares, over the whole range of every knot; for its author' \
'begin:Write a small library of computed knots to begin one'\''s own from, in Rust and in C, into a new or empty folder' \
'check:Read a knot file and report every fault' \
    )
    _describe -t commands 'reeve help knots commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__admit_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__admit_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots admit commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__begin_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__begin_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots begin commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__chart_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__chart_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots chart commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__check_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__dismiss_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__dismiss_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots dismiss commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__hand_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__hand_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots hand commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__list_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__probe_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__probe_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots probe commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__sample_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__sample_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots sample commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__show_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__knots__subcmd__tighten_commands] )) ||
_reeve__subcmd__help__subcmd__knots__subcmd__tighten_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help knots tighten commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__man_commands] )) ||
_reeve__subcmd__help__subcmd__man_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help man commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__mix_commands] )) ||
_reeve__subcmd__help__subcmd__mix_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help mix commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__quote_commands] )) ||
_reeve__subcmd__help__subcmd__quote_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help quote commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__schema_commands] )) ||
_reeve__subcmd__help__subcmd__schema_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help schema commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__takeoff_commands] )) ||
_reeve__subcmd__help__subcmd__takeoff_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help takeoff commands' commands "$@"
}
(( $+functions[_reeve__subcmd__help__subcmd__weigh_commands] )) ||
_reeve__subcmd__help__subcmd__weigh_commands() {
    local commands; commands=()
    _describe -t commands 'reeve help weigh commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots_commands] )) ||
_reeve__subcmd__knots_commands() {
    local commands; commands=(
'list:List the knots at hand, the shop'\''s own with them' \
'show:Show one knot\: what it takes, how far it rises, how long it lasts, and where each figure comes from' \
'chart:Write the chart of the knots, to pin to a wall\: a page with each one'\''s drawing and what it takes' \
'tighten:Tighten a drawn knot\: compute from its path what it takes and how far it rises' \
'sample:Add a sample\: a knot tied a few times for trial, measured, and perhaps timed' \
'hand:Show what the samples say\: give of cords, factors of knots, pace and pull' \
'admit:Take a library of computed knots into a shop, after probing it and showing what it declares' \
'dismiss:Take a library out of a shop' \
'probe:Hold a library of computed knots to what it declares, over the whole range of every knot; for its author' \
'begin:Write a small library of computed knots to begin one'\''s own from, in Rust and in C, into a new or empty folder' \
'check:Read a knot file and report every fault' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve knots commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__admit_commands] )) ||
_reeve__subcmd__knots__subcmd__admit_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots admit commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__begin_commands] )) ||
_reeve__subcmd__knots__subcmd__begin_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots begin commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__chart_commands] )) ||
_reeve__subcmd__knots__subcmd__chart_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots chart commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__check_commands] )) ||
_reeve__subcmd__knots__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__dismiss_commands] )) ||
_reeve__subcmd__knots__subcmd__dismiss_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots dismiss commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__hand_commands] )) ||
_reeve__subcmd__knots__subcmd__hand_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots hand commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help_commands] )) ||
_reeve__subcmd__knots__subcmd__help_commands() {
    local commands; commands=(
'list:List the knots at hand, the shop'\''s own with them' \
'show:Show one knot\: what it takes, how far it rises, how long it lasts, and where each figure comes from' \
'chart:Write the chart of the knots, to pin to a wall\: a page with each one'\''s drawing and what it takes' \
'tighten:Tighten a drawn knot\: compute from its path what it takes and how far it rises' \
'sample:Add a sample\: a knot tied a few times for trial, measured, and perhaps timed' \
'hand:Show what the samples say\: give of cords, factors of knots, pace and pull' \
'admit:Take a library of computed knots into a shop, after probing it and showing what it declares' \
'dismiss:Take a library out of a shop' \
'probe:Hold a library of computed knots to what it declares, over the whole range of every knot; for its author' \
'begin:Write a small library of computed knots to begin one'\''s own from, in Rust and in C, into a new or empty folder' \
'check:Read a knot file and report every fault' \
'help:Print this message or the help of the given subcommand(s)' \
    )
    _describe -t commands 'reeve knots help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__admit_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__admit_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help admit commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__begin_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__begin_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help begin commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__chart_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__chart_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help chart commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__check_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__check_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help check commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__dismiss_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__dismiss_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help dismiss commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__hand_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__hand_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help hand commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__help_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__help_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help help commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__list_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__probe_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__probe_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help probe commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__sample_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__sample_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help sample commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__show_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__help__subcmd__tighten_commands] )) ||
_reeve__subcmd__knots__subcmd__help__subcmd__tighten_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots help tighten commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__list_commands] )) ||
_reeve__subcmd__knots__subcmd__list_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots list commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__probe_commands] )) ||
_reeve__subcmd__knots__subcmd__probe_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots probe commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__sample_commands] )) ||
_reeve__subcmd__knots__subcmd__sample_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots sample commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__show_commands] )) ||
_reeve__subcmd__knots__subcmd__show_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots show commands' commands "$@"
}
(( $+functions[_reeve__subcmd__knots__subcmd__tighten_commands] )) ||
_reeve__subcmd__knots__subcmd__tighten_commands() {
    local commands; commands=()
    _describe -t commands 'reeve knots tighten commands' commands "$@"
}
(( $+functions[_reeve__subcmd__man_commands] )) ||
_reeve__subcmd__man_commands() {
    local commands; commands=()
    _describe -t commands 'reeve man commands' commands "$@"
}
(( $+functions[_reeve__subcmd__mix_commands] )) ||
_reeve__subcmd__mix_commands() {
    local commands; commands=()
    _describe -t commands 'reeve mix commands' commands "$@"
}
(( $+functions[_reeve__subcmd__quote_commands] )) ||
_reeve__subcmd__quote_commands() {
    local commands; commands=()
    _describe -t commands 'reeve quote commands' commands "$@"
}
(( $+functions[_reeve__subcmd__schema_commands] )) ||
_reeve__subcmd__schema_commands() {
    local commands; commands=()
    _describe -t commands 'reeve schema commands' commands "$@"
}
(( $+functions[_reeve__subcmd__takeoff_commands] )) ||
_reeve__subcmd__takeoff_commands() {
    local commands; commands=()
    _describe -t commands 'reeve takeoff commands' commands "$@"
}
(( $+functions[_reeve__subcmd__weigh_commands] )) ||
_reeve__subcmd__weigh_commands() {
    local commands; commands=()
    _describe -t commands 'reeve weigh commands' commands "$@"
}

if [ "$funcstack[1]" = "_reeve" ]; then
    _reeve "$@"
else
    compdef _reeve reeve
fi
