# What the pages say in English. Another language is a file beside this one, named by its tag (fr.ftl, pt-BR.ftl), with the
# same names; a phrase that it lacks is said in English. Syntax: Project Fluent. What stands in { } is put in by the program.

## Figures and dates. A figure and its unit are held together by a no-break space.

percent = { $figure } %
millimetres = { $figure } mm
centimetres = { $figure } cm
metres = { $figure } m
grams = { $figure } g
kilograms = { $figure } kg
seconds = { $figure } s
minutes = { $figure } min
hours = { $figure } h
hours-minutes = { $hours } h { $minutes } min
degrees = { $figure }°
# A language without this phrase writes year-month-day.
date =
    { $day } { $month ->
        [1] January
        [2] February
        [3] March
        [4] April
        [5] May
        [6] June
        [7] July
        [8] August
        [9] September
        [10] October
        [11] November
       *[12] December
    } { $year }

## The quote

quote = Quote
quote-reference = Reference
quote-date = Date
quote-open-until = Open until
quote-ready-by = Ready by
quote-changes = Changed since the last quote
quote-what = What
quote-how-many = How many
quote-each = Each
quote-tax = Tax
quote-amount = Amount
quote-parts = What the amount is made up of
quote-totals = Totals
quote-payment = How it is paid
quote-instalment = Payment
quote-when = When
quote-care = Looking after it
quote-cautions = Please take care
quote-terms = Terms
quote-sign-here = For your signature
quote-accepted = Accepted: place and date
quote-signature = Signature
quote-tax-number = Tax number { $number }.
quote-tax-number-line = Tax number { $number }
quote-accept-line = Accepted (place, date, signature):
quote-finished = Finished size: { $size }.
quote-part-cord = Cord
quote-part-fittings = Rings, dowels and beads
quote-part-making = Making
quote-part-finishing = Finishing and packing
quote-rush = Work out of turn
quote-with-percent = { $reason }, { $percent }
quote-taxed = { $reason } (taxed { $rate })
quote-sum-of-lines = Sum of the lines
quote-without-tax = Without tax
quote-exempt = Exempt from tax: { $base }
quote-tax-on = Tax { $rate } on { $base }
quote-total = Total
quote-total-inclusive = Total, tax included
quote-paid = Paid
quote-due = Due
quote-prices-net = Line amounts are without tax.
quote-prices-inclusive = All amounts include tax.
quote-prices-untaxed = No tax is charged.
quote-deposit = Deposit, { $percent }
quote-deposit-rest = Rest of the deposit of { $percent }
quote-balance = Balance
quote-refund = Paid back to you
quote-on-acceptance = on acceptance
quote-before-delivery = before delivery
quote-settled-more = { $paid } is paid: { $back } more than all of it comes to. That is paid back to you.
quote-settled-all = All of it is paid: nothing is left to pay.
quote-settled-some = { $paid } is paid.
quote-settled-part = Of the deposit of { $deposit }, { $paid } is paid.
quote-settled-deposit = { $paid } is paid, and with it the deposit of { $deposit }.
# What European and other law says on taking back: Directive 2011/83/EU, article 16(c).
quote-made-to-order = Made to your specification. In the European Union the 14-day right of withdrawal does not apply to goods made to a consumer's specifications (Directive 2011/83/EU, article 16(c)); elsewhere, and in doubt, the law of your place decides.

## Cautions: they name the rules that may apply, state no limit as met, and defer to the rules of the place and to licensed persons.

caution-hanging-weight = Knots weaken a cord, often to about half of its strength, and sources disagree on how much: no load is rated here. The hook, its fixing and the ceiling or wall are the owner's to have checked; ask a licensed person where a fixing carries weight, and follow your local rules.
caution-cords-in-reach = Cords within reach of small children can strangle. Keep loops and free cords short and out of reach. Rules for toys and blind cords differ by country and edition (EN 71-1, ASTM F963, EN 13120, 16 CFR 1260): follow those of your place.
caution-above-cot = Not a toy. Anything strung across or above a cot comes down when the baby begins to push up on hands and knees or at 5 months, whichever comes first (U.S. Consumer Product Safety Commission, document 5024).
caution-near-lamp = Cord can scorch and burn. Keep it clear of the bulb, use a cool, low-power lamp, and have wiring done and checked by a licensed electrician under your local rules.
caution-in-doorway = Cords in a doorway or window can catch and entangle. Keep the ends short where small children or animals pass.

## What the maker should look at before she sends a quote

remark-promised-too-late = Promised for { $promised }, but the client needs it by { $needed }.
remark-below-aim = The shop aims at { $aim }, and { $left } remain after breaks, discount and prices given.
remark-loses = This commission loses money: it brings in less than it costs.
remark-earns-less = An hour at the bench earns less here than the wage.
remark-weight-estimated = The weight of { $cord } is a rough estimate from fibre and thickness: weigh 10 m of it.
remark-maybe-cheaper = A cheaper way to buy { $cord } may exist; the search was cut short.
remark-overpaid = More was paid than this comes to: { $amount } goes back to the client.

## The costing

costing-income = Comes in, without tax
costing-cost = Cost
costing-margin = Margin
costing-margin-percent = Margin on what comes in
costing-hours = Bench hours
costing-per-hour = A bench hour earns
costing-sure = If it takes the hours that suffice { $percent } of the time
costing-priced-for-these = The prices are worked out for these hours.
costing-priced-for-expected = The prices are worked out for the hours expected.
costing-cord = Cord
costing-fittings = Rings, dowels and beads
costing-making = Labour: making
costing-finishing = Labour: finishing and packing
costing-other = Used up and bought in
costing-overhead = Overhead
costing-practised = The first takes { $first }, the last { $last }, apart from what is done once.
costing-aim-is = Aim: { $aim }
costing-price-agreed = Price agreed, in its place
costing-quantity-break = For the number of pieces
costing-at-minimum = Lifted to the minimum
costing-price-of-one = Price of one
costing-price-of-all = All of them
costing-aim-margin = { $percent } of the price left over
costing-aim-markup = { $percent } on top of cost
costing-aim-per-hour = { $amount } earned by a bench hour
costing-practice = Practice
costing-practice-none = none counted
costing-practice-leaves = Practice: a doubling of the pieces leaves
costing-practice-of-a-piece = { $percent } of a piece, to piece { $steady }
costing-practice-of-average = { $percent } of the average, to piece { $steady }
costing-overhead-per-hour = { $amount } a bench hour
costing-overhead-of-labour = { $percent } of labour
costing-overhead-of-prime-cost = { $percent } of prime cost
costing-wage = Wage of a bench hour
costing-aim = Aim
costing-pace = Pace against the catalogue
costing-pace-strays = It strays from job to job by
costing-allowances = Relaxation allowances, in all
costing-cutting-allowance = Cutting allowance
costing-fee = { $rate } and { $fixed } an order
costing-hand-pace = Pace { $pace }, and { $pull } for pulling what hangs: from { $from }.
costing-hand-time = Of each { $knot }, { $times } times the catalogue's time at that pace.
costing-take-up-by-sample = One { $knot } takes { $length } of { $cord }: your sample.
costing-take-up-by-hand = One { $knot } takes { $length } of { $cord }: your hand.
costing = Costing
costing-reference = Reference
costing-date = Date
costing-remarks = Look at this before you send the quote
costing-outcome = What remains
costing-all = All
costing-one = One
costing-given-lines = Lines with a price given
costing-what = What
costing-asked = Asked
costing-whole = Cost of the whole
costing-rates = Rates it was worked out with
costing-hand = What your samples say
costing-item-hours = { $hours } at the bench for all of them

## The bench sheet

bench = Bench sheet
bench-reference = Reference
bench-date = Date
bench-ready-by = Ready by
bench-hours = Bench hours
bench-to-buy = To buy
bench-also = Also on the order
bench-also-are = Also on the order:

## What is bought: the take-off

takeoff = Take-off
takeoff-of-one = Take-off of one piece
takeoff-design = Design
takeoff-sizes = Sizes
takeoff-measures = Measures
takeoff-finished = Finished size
takeoff-weight = Weight
takeoff-time = Bench time
takeoff-time-practised = { $time }. { $tenth }
takeoff-bench = At the bench
takeoff-to-buy = To buy for one piece

## What bench sheet and take-off have in common: cut list, buying list, steps

work-done = Done
work-what = What
work-buy = Buy
work-price = Price
work-one-piece = One piece
work-how-many = How many
work-all-pieces = All { $count }
work-cut-list = Cut list
work-cords = Cords
work-cut-each = Cut each
work-fold = Fold
work-each = Each
work-all = All
work-cut = Cut
work-order = Working order
work-step = Step
work-count = Count
work-time = Time
work-knots = Knots in one piece
work-legs = Legs, without allowance
work-lay-ready = Lay ready:
work-once-for-all = once for all
work-finished = Finished size { $size }.
work-one = One weighs about { $weight } and takes { $time }.
work-one-and-all = One weighs about { $weight } and takes { $time }; all take { $all }.
work-tenth = The tenth of a row takes { $time }.
work-lay-out = Lay out
work-set-marks = Set the marks to cut to
work-measure-and-cut = Measure and cut
work-pack = Pack
work-fold-single = single
work-fold-middle = in the middle, at { $length }
work-fold-from = { $length } from the { $set } end
work-on-legs =
    { $count ->
        [one] { $length } on { $count } leg
       *[other] { $length } on { $count } legs
    }
work-in-columns = { $knots }, { $each } in each of { $columns } columns
work-knots-take = { $knots }; one takes { $length } of leg
work-knots-take-by-sample = { $knots }; one takes { $length } of leg, by your sample
work-knots-take-by-hand = { $knots }; one takes { $length } of leg, by your hand
work-one-diameter = { $length } (1 diameter)
work-diameters = { $length } ({ $figure } diameters)
work-cut-and-left = { $cut } cut, { $left } left

## The pages of the book

private = For the maker's eyes only.
private-never-send = Never send this page to a client.
state-enquiry = enquiry
state-quoted = quoted
state-lapsed = lapsed
state-accepted = accepted
state-declined = declined
state-on-bench = on the bench
state-finished = finished
state-delivered = delivered
state-paid = paid
state-cancelled = cancelled
book-number = Number
book-stands = Stands
book-client = Client
# What the program says when something was entered.
entered-enquiry = { $name } is in the book as an enquiry.
entered-mark = { $name } was { $was } and is { $is }.
entered-payment = { $amount } entered for { $name }; { $due } is owed.
entered-overpaid = { $amount } entered for { $name }; { $back } more was paid than it comes to, and goes back.
entered = Entered for { $name }.
entered-undone = Entry { $number } of { $name } is undone: { $what }. It stays in the book, and counts no more.
entered-timer-runs = The timer runs for { $name }.
entered-minutes = { $minutes } minutes entered for { $name }.
entered-too-short = The timer ran for less than half a minute: nothing was entered for { $name }.
entered-timer-dropped = The timer is dropped; nothing was entered.
entered-no-timer = The timer did not run.

## The list of the book

list = Order book
list-as-of = As of
list-since = Since
list-quoted = Quoted
list-owed = Owed
list-empty = No commission is like that.
list-goes-back = { $amount } goes back

## The queue

queue-passing = { $days } for { $what }
ready-on =
    { $behind ->
        [0] It can honestly be ready by { $day } (days before the first knot: { $lead }).
       *[other] It can honestly be ready by { $day }, behind { $behind } accepted before (days before the first knot: { $lead }).
    }
ready-on-and-after =
    { $behind ->
        [0] It can honestly be ready by { $day } (days before the first knot: { $lead }; after the last, { $after }).
       *[other] It can honestly be ready by { $day }, behind { $behind } accepted before (days before the first knot: { $lead }; after the last, { $after }).
    }
ready-needed-by = The client needs it by { $day }: { $missed }.
ready-promised = It is promised for { $day }: { $missed }.
ready-late =
    { $count ->
        [one] { $count } day too late, { $hours } bench hours short
       *[other] { $count } days too late, { $hours } bench hours short
    }
ready-short = { $hours } bench hours short
queue-lead = Days from the yes to the first knot: { $days }.
queue-no-after = None are counted from the last knot until the client has it (`after-days` in shop.toml).
queue-after = From the last knot until the client has it: { $days }.
queue = On the bench and next
queue-from = From
queue-weekly = Hours a week
queue-waiting = Hours waiting
queue-hours-left = Hours left
queue-ready = Ready
queue-promised = Promised
queue-holds = Holds
queue-empty = Nothing is waiting.
queue-holds-yes = yes
queue-never = never
queue-note = Hours left are those that suffice with the confidence of the quote, less the hours logged. One piece of work is finished before the next begins.
queue-late =
    { $count ->
        [one] { $count } day late
       *[other] { $count } days late
    }
queue-holds-no = no

## A year in sums

summary = Summary of the order book
summary-month = Month
summary-quoted = Quoted
summary-won = Won
summary-lost = Lost
summary-share-won = Share won
summary-income = Income
summary-material = Material
summary-hours = Hours
summary-per-hour = An hour
summary-empty = Nothing happened.
summary-all = all
summary-note = Income is what was paid, tax included. Material, hours and what an hour earned are of work finished in the month: as logged, else as quoted. Your own adviser decides what your tax return needs.

## What commissions took

took = What it really took
took-none-finished = No finished work has anything logged.
took-works = Finished works
took-quoted = Quoted
took-really = Really
took-difference = Difference
took-no-quote = No quote was issued.
took-not-finished = It is not finished: this is what is logged so far.
took-nothing-logged = Nothing is logged yet: `reeve book log`, or `start` and `stop`.
took-day = Day
took-step = Step
took-time = Time
took-logged = What was logged
took-nothing-yet = Nothing yet.
took-whole = the whole
took-hours = Bench hours
took-cord = Cord
took-material = Material
took-cost = Cost
took-margin = Margin
took-per-hour = A bench hour earns

## One commission whole

whole = Commission
whole-file = File
whole-quoted = Quoted
whole-deposit = Deposit asked
whole-paid = Paid
whole-valid-until = Valid until
whole-promised = Promised
whole-since = { $state }, since { $day }
whole-goes-back = Goes back to the client
whole-owed = Owed
whole-hours = Hours
whole-hours-expected = { $expected } expected, { $suffice } suffice
whole-quote = Quote
whole-day = Day
whole-gross = Gross
whole-margin = Margin
whole-quotes = Quotes
whole-no-quotes = None was issued.
whole-first = first
whole-revision = revision { $number }
whole-number = No.
whole-entered = What was entered
whole-entries = Entries
whole-no-entries = Nothing.
whole-undone = undone: { $what }
whole-undone-on = Undone on { $day }: { $why }
logged-paid-back = paid back { $amount }
logged-paid = paid { $amount }
logged-minutes = { $minutes } minutes
logged-minutes-at = { $minutes } minutes, { $step }
logged-cord = { $length } of { $cord }
logged-bought = bought for { $amount }: { $what }

## What was learnt

learnt-slip = { $work } is not counted: it took { $times } times what was expected, which looks like a slip
learnt-stated = { $work } is not counted: it took { $minutes } minutes, and { $stated } of them you had stated yourself, which leaves none for knots and handling
learnt-gone = { $work }: no longer learnt from: the book does not bear it out.
learnt-step = { $work }: { $minutes } minutes.
learnt-step-anew = { $work }: { $minutes } minutes in place of { $was }.
learnt-work = { $work }: { $minutes } minutes for knots and handling.
learnt-work-anew = { $work }: { $minutes } minutes for knots and handling in place of { $was }.
learnt-odd = { $work } is kept, but not counted until others bear it out
learnt-pace-and-pull = { $pace }, and { $pull } for pulling what hangs
learnt-pace = Your pace is { $pace }.
learnt-pace-anew = Your pace is { $pace }, in place of { $was }.
learnt-knot = Of each { $knot }, { $times } times the catalogue's time at that pace, in place of { $was }.

## What changed since the last quote

change-new = New: { $what }, { $amount }.
change-gone = No longer: { $what }.
change-quantity = { $what }: { $new } in place of { $old }.
change-unit-price = { $what }: { $new } each in place of { $old }.
change-taken-off = Taken off the whole: { $new } in place of { $old }.
change-put-on = Put on the whole: { $new } in place of { $old }.
change-in-all = In all: { $new } in place of { $old }.
change-promised = To be ready: { $new } in place of { $old }.
change-no-day = none
change-paid = Paid so far: { $new } in place of { $old }.
change-valid-until = Valid until: { $new } in place of { $old }.
change-hours = Bench hours: { $new } in place of { $old }.
change-cost = Cost: { $new } in place of { $old }.
change-margin = Margin: { $new } in place of { $old }.

## The comparison of designs

column-design = Design
column-size = Size
column-cord = Cord
column-put-ups = Put-ups
column-weight = Weight
column-hours = Hours
column-material = Material
column-labour = Labour
column-overhead = Overhead
column-cost = Cost
column-lowest = Lowest price
column-price = Price by the aim
column-before-fees = Margin before fees
column-fees = Fees
column-margin = Margin after fees
column-margin-percent = Margin, %
column-per-hour = Earnings an hour
column-contribution = Contribution an hour
column-market = Buyers pay
column-market-margin = Margin at what buyers pay
column-market-percent = Margin at what buyers pay, %
column-market-per-hour = Earnings an hour at what buyers pay
column-weekly = Buyers a week
compare-title = Designs beside one another
compare-stacks = What the price of each is made of
compare-some-drawn =
    The first { $drawn } are drawn; { $more ->
        [one] { $more } more stands
       *[other] { $more } more stand
    } in the table.
compare-hours = Bench hours
compare-margin-per-hour = Margin an hour
compare-spots = Margin of a bench hour against hours
compare = Comparison
compare-moves = What moves the margin most
compare-moves-note = Each input a tenth higher or lower, at the same price.
compare-table = What each costs, brings in and earns
compare-design = Design
compare-hours-column = Hours
compare-cost = Cost
compare-price = Price
compare-margin = Margin
compare-per-hour = An hour
compare-percent = Of what comes in
compare-an-hour-earns = An hour earns
compare-at-market = at what buyers pay
compare-all = All the figures
compare-sorted = One of each, made and sold alone. Sorted by: { $column }.
compare-market-note = Where it is known what buyers pay, charts and bars are at that price.
what-if-sentence = What if: { $change }.
what-if = What if: { $change }
compare-earns = What an hour at the bench earns
compare-earns-key = # at the shop's price, + at what buyers pay
compare-foot = Margin is what remains after cost and fees. The other columns (cord, put-ups, weight, material, lowest price, contribution) are in --as html, csv and json.

## What is worth making: the mix

mix-title = A week at the bench
mix-any = any
mix-take = They take
mix-contribute = They contribute
mix-per-hour = A bench hour contributes
mix-another-hour = One more hour a week would bring
mix-done-once = Hours of one, and what an hour of it contributes, are of one made by itself. In the mix what is done once (laying out, setting marks, a task that is once for all) counts once for each design made, however many are made of it: make them in one go. A size is a design of its own here.
mix-any-number = “any”: nobody has said how many find a buyer in a week, so as many are made as the hours hold. Say `weekly` under [market] or in a [[size]], or --demand.
mix-no-market = Where nobody has said what buyers pay, the price is by the shop's aim, which is no proof that anyone pays it.
mix-unproven = A slightly better mix may exist: many designs bring almost the same an hour.
mix = A week
mix-kind = The best mix
mix-each = What an hour of each contributes
mix-design = Design
mix-an-hour = An hour
mix-contribution-note = What comes in less fees, material and other direct costs. Your pay and the overhead come out of that.
mix-what = What to make
mix-make = Make
mix-buyers-a-week = Buyers a week
mix-hours-of-one = Hours of one
mix-price = Price
mix-hours = Hours
mix-buyers = Buyers
mix-hours-used = { $hours }, used so that they contribute most.
mix-none = none
mix-an-hour-is = "An hour" is what an hour of it contributes: what comes in less fees, material and other direct costs. Your pay and the overhead come out of that.

## A weighing of one design

input-cord = Price of cord
input-wage = Wage
input-overhead = Overhead
input-fees = Fees
input-pace = Pace: time for the same work
changed-cord = cord
changed-cord-of = cord { $cord }
changed-wage = wage
changed-overhead = overhead
changed-fees = fees
changed-pace = pace
changed-higher = { $input } +{ $percent }
changed-lower = { $input } { $percent }
changed-to = { $input } { $value }
weigh-at-market = { $price }, what buyers pay
weigh-at-aim = { $price }, by the shop's aim
# Beneath a tick where the price ends.
price-tick = price
price-material = Material
price-labour = Labour
price-overhead = Overhead
price-fees = Fees
price-margin = Margin
weigh-either = { $higher } or { $lower }
weigh-lowest = Lowest price that pays the wage
weigh-by-aim = Price by the shop's aim
weigh-income = Comes in, without tax
weigh-margin-after-fees = Margin after fees
weigh-margin-percent = Margin on what comes in
weigh-hours = Bench hours
weigh-per-hour = A bench hour earns
weigh-contributes = A bench hour contributes
weigh-never-pays = { $cost } in all, and at this price no number of pieces ever pays for it.
weigh-pays =
    { $cost } in all: paid for by the margin of { $pieces ->
        [one] { $pieces } piece
       *[other] { $pieces } pieces
    }.
weigh-pays-in-weeks =
    { $cost } in all: paid for by the margin of { $pieces ->
        [one] { $pieces } piece
       *[other] { $pieces } pieces
    }, some { $weeks ->
        [one] { $weeks } week
       *[other] { $weeks } weeks
    } at { $weekly } a week.
weigh = Weighed
weigh-design = Design
weigh-made-of = What the price is made of
weigh-without-tax = Without tax
weigh-made-of-without-tax = without tax
weigh-amount = Amount
weigh-share = Share
weigh-remains = What remains
weigh-moves = What moves the margin most
weigh-moves-note = Each a tenth higher or lower, at the same price.
weigh-margin = Margin
weigh-higher = A tenth higher
weigh-lower = A tenth lower
weigh-sure = How sure the hours are
weigh-suffice = They suffice
weigh-hours-column = Hours
weigh-price-for-them = Price for them
weigh-margin-at-price = Margin at this price
weigh-prices = At other prices
weigh-price = Price
weigh-percent = Of what comes in
weigh-efforts = Work done once for the design
weigh-what = What
weigh-time = Time
weigh-cost = Cost
weigh-price-of = At a price of
weigh-what-if = What if
weigh-at = At { $price }.
weigh-of-the-time = { $percent } of the time

## The list of knots

kind-sennit = sennit
kind-row = row
kind-mounting = mounting
kind-wrap = wrap
kind-single = single
source-geometry = geometry
source-published = published
source-common-practice = common practice
source-from-memory = from memory
source-your-sample = your sample
knots-also = also { $names }
knots-by = by `{ $library }`

## A knot

lacks-path = a [path], so nothing draws it
lacks-tightening = tightening: `reeve knots tighten { $knot } --keep` finds what it takes
lacks-take-up = a measured take-up: `reeve knots sample` takes one down
lacks-rise = a measured rise: `reeve knots sample` takes one down
lacks-time = a measured time: `reeve knots sample` takes one down
diameters = { $figure } diameters
knot-degrees = { $figure } degrees
knot-parameter = { $name }: { $about } From { $least } to { $most }, { $default } if not said.
knot-working-leg-takes = A working leg takes
knot-core-leg-takes = A core leg takes
knot-rises = The work rises
knot-takes = What it takes
knot-working-leg-does = What a working leg does
knot-core-leg-does = What a core leg does
knot-rise = The rise
knot-time = The time
knot-time-is =
    { $count ->
        [one] { $base } s, and { $pull } s for each metre hanging, each time a leg is drawn through ({ $count } time in one knot)
       *[other] { $base } s, and { $pull } s for each metre hanging, each time a leg is drawn through ({ $count } times in one knot)
    }
move-for-each = { $factor } for each of `{ $name }`
move-across = runs across, diameters: { $amount }
move-along = runs along, rises: { $amount }
move-knots = takes what it takes in `{ $knot }`, times: { $times }
move-round = goes round { $thing }, turns: { $turns }
move-round-climbing = goes round { $thing }, turns: { $turns }, climbing { $pitch } diameters a turn
round-core = the core
round-core-with = the core and { $count } legs of its own
round-leg = another leg
round-bundle = a bundle of { $count } legs
working-legs =
    { $count ->
        [one] { $count } working leg
       *[other] { $count } working legs
    }
working-legs-range = { $least } to { $count } working legs
core-legs =
    { $count ->
        [one] { $count } core leg
       *[other] { $count } core legs
    }
core-legs-range = { $least } to { $count } core legs
tied-round-nothing = { $legs }, round nothing
tied-on-fitting = { $legs }, on a fitting
tied-round = { $legs }, round { $core }
tied-round-or-on-fitting = { $legs }, round { $core } or on a fitting
setting = In cord of { $cord } with a give of { $give }, { $legs }
setting-round = In cord of { $cord } with a give of { $give }, { $legs } round { $core }
setting-on-rod = In cord of { $cord } with a give of { $give }, { $legs } on a rod of { $rod }
setting-on-bar = In cord of { $cord } with a give of { $give }, { $legs } on a bar of { $a } x { $b }
knot-also = Also: { $names }
knot-tied-with = Tied with { $legs }.
knot-caution = Caution: { $caution }
knot-by-library = Worked out by the library `{ $library }`.
knot-parameters = Parameters
knot-source = Source: { $source }.
knot-drawn-by = Drawn by `reeve knots show { $name } --as html --out { $name }.html`
knot-not-drawn = Not drawn yet.
knot-caution-head = Caution.
knot-length = length
knot-in-its-cord = in its own cord

## The chart of knots, its legend and sheet

chart-count =
    { $count ->
        [one] { $count } knot
       *[other] { $count } knots
    }
chart-mountings = Mountings
chart-mountings-are = They fasten cords to a fitting or to a carrying leg.
chart-sennits = Sennits
chart-sennits-are = Repeated down their own core, many columns side by side.
chart-rows = Rows
chart-rows-are = Tied side by side over a core that all knots of a row share.
chart-wraps = Wraps
chart-wraps-are = They bind a bundle with a cord of its own.
chart-singles = Single knots
chart-singles-are = Tied once: they stop, join or decorate.
minutes-seconds = { $minutes } min { $seconds } s
chart-take-up = take-up
chart-rise = rise
chart-time = time
chart-and = { $first } and { $second }
chart-source = { $what }: { $source }
chart = Knot chart
chart-page-of = of
chart-legend-line = Working legs: 1 plain, 2 with a line, 3 with ticks, 4 with two lines.  Grey: core leg.  Straw: fitting.  A cord that cuts another lies over it.
chart-lengths = { $knots }. Lengths are for one knot, in diameters of its cord and for cord of { $cord }.
chart-not-drawn = not drawn yet
chart-diameters = diameters
chart-mm = mm
chart-base-time = Base time { $time }.
chart-not-known = What it takes is not known: { $trouble }.
chart-sources = Sources: { $sources }.
legend = How to read the drawings
legend-leg-1 = working leg 1
legend-leg-2 = 2, a line along it
legend-leg-3 = 3, ticks
legend-leg-4 = 4, two lines
legend-core-leg = core leg
legend-fitting = ring, dowel, other fitting
legend-over = lies over what it cuts

## The maker's hand

hand-samples =
    { $count ->
        [one] { $count } sample
       *[other] { $count } samples
    }
hand-cord-from = { $samples }; stated { $give }
hand-knot-in = { $knot } in { $cord }
hand-factors = take-up x { $take_up }, rise x { $rise }
hand-none = No samples yet: every figure is the catalogue's, and the shop's pace is that of shop.toml.
hand-works-alone = No samples yet: but finished work was timed. Behind each figure stands its standard deviation.
hand-from = From { $samples }. Behind each figure stands its standard deviation.
hand-from-some = From { $samples }, { $count } of them not counted. Behind each figure stands its standard deviation.
hand-timed-samples =
    { $count ->
        [one] { $count } timed sample
       *[other] { $count } timed samples
    }
hand-works =
    { $count ->
        [one] { $count } record of finished work
       *[other] { $count } records of finished work
    }
hand-samples-and-works = { $samples } and { $works }
hand-pace = Pace, of what does not depend on length
hand-pull = Pull, for what hangs
hand-knot-time = Of each { $knot }, times that
hand-odd-take-up = the { $knots } in { $cord } took { $got } mm of leg each, where { $expected } mm are expected: it is not counted until other samples bear it out
hand-odd-rise = the { $knots } in { $cord } made { $got } mm each, where { $expected } mm are expected: it is not counted until other samples bear it out
hand-odd-time = the { $knots } in { $cord } took { $got } s each, where { $expected } s are expected: its time is not counted until other samples bear it out
hand = The maker's hand
hand-cords = Give of cords, from 0 (hard) to { $soft } (soft)
hand-knots = Knots, against the catalogue at that give
hand-times = Time, against the catalogue
hand-odd = Not counted

## A sample

sample-give = Give of { $cord }
sample-take-up = { $knot }, factor on take-up
sample-rise = { $knot }, factor on rise
sample-one-takes = One takes of a leg
sample-one-rises = One rises
sample-source = Source of the take-up
sample-time = { $knot }, factor on time
sample-pace = Pace
sample-pull = Pull of what hangs
sample-added = Added to { $file }:
sample-shown = Nothing was written. It would be added to { $file }:
sample-your-hand = your hand
sample-changes = What it changes

## Tightening

tight-hard = hard
tight-in-diameters = { $take_up } and { $rise }
tight-by-moves = Its moves count in take-offs, not its path: this is to hold them against.
tight-by-moves-drawn-for = Its moves count in take-offs, not its path, drawn for { $parameters }: this is to hold them against.
tight = { $knot } ({ $name }), tightened
tight-takes = one knot takes { $take_up } of each working leg and rises { $rise }.
tight-give = Give of the cord
tight-working-leg = A working leg
tight-rise = The rise
tight-diameters = In diameters
tight-give-is = Give is the share of its thickness by which a cord sinks into one of its kind that it is wound round, at the tension of tying: nothing for a hard cord, a fifth for a very soft one.

## Libraries of knots

library-probe = { $asked }, each twice in each of two processes: every answer the same, within the contract, and by the laws that the knots declare. { $refused } refused. The slowest took less than { $slowest }.
library-questions =
    { $count ->
        [one] { $count } question
       *[other] { $count } questions
    }
library-settings =
    { $count ->
        [one] { $count } setting
       *[other] { $count } settings
    }
library-microseconds = { $count } microseconds
library-milliseconds =
    { $count ->
        [one] { $count } millisecond
       *[other] { $count } milliseconds
    }
library-take-up = Take-up: { $source }. { $note }
library-time = Time: { $source }. { $note }
library = { $name } { $version }, a library of knots
library-digest = SHA-256 { $digest }
library-guards = What its process is held to
library-probed = Probed
