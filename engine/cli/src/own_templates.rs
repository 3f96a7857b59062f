//! Judges a shop's own templates: each page that one of them has a part in is laid out with sample views.

use std::collections::BTreeMap;

use reeve_pages::{BUILT_IN, ENGLISH, Form, OwnTemplate, TemplateError, tag_at};
use reeve_reading::{Fault, SourceText, nearest};
use serde_json::Value;

use crate::failure::Failure;
use crate::layout::{Noted, byte_at, template_fault, used};
use crate::page_process::{self, Ended};
use crate::sample_views;

/// The most faults that are looked for on one page.
const MOST_FAULTS: usize = 20;
/// After so many pages that take too much no further one is laid out: each takes some seconds.
const MOST_SPENT: usize = 3;

/// Every fault of a shop's own templates.
pub(crate) fn judge(own: &[OwnTemplate]) -> Result<Vec<Fault>, Failure> {
    if own.is_empty() {
        return Ok(Vec::new());
    }
    let pages = pages(sample_views::all()?);
    let mut faults: Vec<Fault> = unused(own, &pages);
    let mut left = own.to_vec();
    let mut spent = 0;
    for (template, (form, views)) in &pages {
        if spent >= MOST_SPENT {
            let help = "mend what takes too much first, and check again";
            faults.push(Fault::without_place("further pages of templates/ were not looked at", help));
            break;
        }
        for fault in faults_of(template, *form, views, &used(template, &left))? {
            // Once is enough to wait for a part of many pages.
            left.iter_mut().filter(|file| fault.spent && file.path == fault.file).for_each(|file| file.text.clear());
            spent += usize::from(fault.spent);
            let fault = template_fault(&fault, own);
            // Several pages may have a part in common.
            if !faults.contains(&fault) {
                faults.push(fault);
            }
        }
    }
    Ok(faults)
}

/// What each page is laid out with.
type OwnPages = BTreeMap<String, (Form, Vec<Value>)>;

fn pages(noted: Vec<Noted>) -> OwnPages {
    let mut pages = OwnPages::new();
    for Noted { template, form, view } in noted {
        pages.entry(template).or_insert((form, Vec::new())).1.push(view);
    }
    pages
}

/// A fault for each file that no page has a part in.
fn unused(own: &[OwnTemplate], pages: &OwnPages) -> Vec<Fault> {
    let in_use: Vec<String> = pages.keys().flat_map(|page| used(page, own)).map(|file| file.name).collect();
    let names = || BUILT_IN.iter().map(|(name, _)| *name);
    let idle = own.iter().filter(|file| !in_use.contains(&file.name));
    idle.map(|file| {
        let near = nearest(&file.name, names()).map(|near| format!("did you mean `{near}`? "));
        let help = format!(
            "{}A template is used that is called like one of the program's own, or that another one includes.",
            near.unwrap_or_default()
        );
        let mut fault = Fault::without_place(format!("no page uses the template {}", file.name), help);
        fault.place = Some((SourceText::new(file.path.as_str(), file.text.as_str()), 0..0));
        fault
    })
    .collect()
}

/// The faults of a page, one behind the other: what is told already is taken out, and the page laid out again.
fn faults_of(template: &str, form: Form, views: &[Value], own: &[OwnTemplate]) -> Result<Vec<TemplateError>, Failure> {
    let mut left = own.to_vec();
    let mut faults = Vec::new();
    while !own.is_empty() && faults.len() < MOST_FAULTS {
        let fault = match page_process::fill(&left, ENGLISH, template, form, views) {
            Ok(_) => break,
            Err(Ended::Fault(fault)) => fault,
            Err(Ended::System(why)) => return Err(Failure::System(why)),
        };
        let file = left.iter_mut().find(|file| file.path == fault.file);
        let goes_on = !fault.spent && file.is_some_and(|file| take_out(file, &fault));
        faults.push(fault);
        if !goes_on {
            break;
        }
    }
    Ok(faults)
}

/// Takes what is at fault out of a template: the tag if it only prints, else all of it. Says whether there was something.
fn take_out(file: &mut OwnTemplate, fault: &TemplateError) -> bool {
    let at = fault.line.zip(fault.column).map(|(line, column)| byte_at(&file.text, line, column));
    let tag = at.and_then(|at| tag_at(&file.text, at)).filter(|(_, prints)| *prints && !fault.spent);
    let span = tag.map_or(0..file.text.len(), |(span, _)| span);
    let taken = file.text.get(span.clone()).unwrap_or_default();
    // Lines and columns of what is left stay as they are.
    let blank: String = taken.chars().map(|c| if c == '\n' { '\n' } else { ' ' }).collect();
    if taken == blank {
        return false;
    }
    file.text.replace_range(span, &blank);
    true
}
