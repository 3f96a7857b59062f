//! `reeve book learn`: what finished work teaches, written into the shop on the maker's word alone.

use reeve_office::Lesson;
use reeve_pages::book::{left_out_words, lesson_words, odd_work_words};

use crate::bookkeeping::Bookkeeping;
use crate::failure::{Failure, say};
use crate::output::{print, print_done};

pub(crate) fn learn(yes: bool, place: &Bookkeeping) -> Result<(), Failure> {
    let (lesson, left_out) = Lesson::of(&place.shop, &place.book()?, place.day)?;
    let words = place.desk.words();
    for why in &left_out {
        say(&format!("look: {}", left_out_words(why, words)));
    }
    let lesson = lesson.ok_or_else(|| {
        Failure::input(
            "no finished work has minutes that could be learnt from",
            "log them with `reeve book log`, and mark the work finished",
        )
    })?;
    for odd in odd_work_words(&lesson, words) {
        say(&format!("look: {odd}"));
    }
    let mut told = lesson_words(&lesson, place.desk.basis(), words);
    if !lesson.after.changes {
        told.push_str("Nothing new: it stands in knots/samples.toml already.\n");
    } else if yes {
        lesson.keep()?;
        told.push_str("It stands in knots/samples.toml now.\n");
        print_done(&told);
        return Ok(());
    } else {
        told.push_str("Nothing was written. With --yes it is.\n");
    }
    print(&told)
}
