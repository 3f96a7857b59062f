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

## The bench sheet

## What is bought: the take-off

## What bench sheet and take-off have in common: cut list, buying list, steps

## The pages of the book

## The list of the book

## The queue

## A year in sums

## What commissions took

## One commission whole

## What was learnt

## What changed since the last quote

## The comparison of designs

## What is worth making: the mix

## A weighing of one design

## The list of knots

## A knot

## The chart of knots, its legend and sheet

## The maker's hand

## A sample

## Tightening

## Libraries of knots
