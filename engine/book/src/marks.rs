//! Marks that stand for a client's name and address in what is kept.
//!
//! They are characters that no text has otherwise (Unicode's private use), so nothing that is typed can be mistaken for one.

use crate::records::BookedClient;

/// What stands where a forgotten client's name stood.
pub const FORGOTTEN: &str = "(forgotten)";

pub(crate) const EDGE: char = '\u{e000}';

/// The mark of the name.
pub fn name_mark() -> String {
    format!("{EDGE}name{EDGE}")
}

/// The mark of a line of the address.
pub fn address_mark(line: usize) -> String {
    format!("{EDGE}{line}{EDGE}")
}

/// A text with marks in place of the client's name.
pub fn mark(text: &str, client: &BookedClient) -> String {
    // Edges that were typed would be taken for marks.
    let text: String = text.chars().filter(|c| *c != EDGE).collect();
    if client.name.is_empty() { text } else { replaced(&text, &client.name) }
}

/// A text with the mark in place of a name where that stands as words of its own: not the Ada in Adana.
fn replaced(text: &str, name: &str) -> String {
    let (mut marked, mut from) = (String::new(), 0);
    while let Some(at) = text[from..].find(name).map(|found| from + found) {
        let end = at + name.len();
        let letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let inside = letter(text[..at].chars().next_back()) || letter(text[end..].chars().next());
        marked.push_str(&text[from..at]);
        marked.push_str(if inside { name } else { "" });
        if !inside {
            marked.push_str(&name_mark());
        }
        from = end;
    }
    marked + &text[from..]
}

/// How what fills a mark is written in a kind of text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Markup {
    /// As it is.
    Text,
    /// In HTML.
    Html,
    /// In a string of JSON.
    Json,
}

impl Markup {
    /// The kind of a page by its name.
    pub fn of(name: &str) -> Self {
        match name.rsplit('.').next() {
            Some("html") => Self::Html,
            Some("json") => Self::Json,
            _ => Self::Text,
        }
    }

    fn written(self, text: &str) -> String {
        match self {
            Self::Text => text.to_owned(),
            // As the templates write it.
            Self::Html => {
                let text = text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
                text.replace('"', "&quot;").replace('\'', "&#39;")
            }
            Self::Json => {
                let quoted = serde_json::Value::from(text).to_string();
                quoted.strip_prefix('"').and_then(|text| text.strip_suffix('"')).unwrap_or(&quoted).to_owned()
            }
        }
    }
}

/// A text with its marks filled in.
pub fn fill(text: &str, kind: Markup, client: &BookedClient) -> String {
    let mut filled = text.replace(&name_mark(), &kind.written(&client.name));
    for (line, words) in client.address.iter().enumerate() {
        filled = filled.replace(&address_mark(line), &kind.written(words));
    }
    // Lines of an address that is forgotten.
    while let Some(start) = filled.find(EDGE) {
        let Some(end) = filled[start + EDGE.len_utf8()..].find(EDGE) else { break };
        filled.replace_range(start..start + EDGE.len_utf8() + end + EDGE.len_utf8(), "");
    }
    filled
}

#[cfg(test)]
mod tests {
    use super::*;

    fn client() -> BookedClient {
        BookedClient { name: "Ada & <Co>".to_owned(), address: vec!["1 \"Quay\"".to_owned()] }
    }

    #[test]
    fn a_name_is_marked_as_a_word_of_its_own() {
        let ada = BookedClient { name: "Ada".to_owned(), address: Vec::new() };
        let marked = mark("Ada, from Adana: Ada's; ada; xAda", &ada);
        assert_eq!(marked, format!("{0}, from Adana: {0}'s; ada; xAda", name_mark()));
        assert_eq!(fill(&marked, Markup::Text, &ada), "Ada, from Adana: Ada's; ada; xAda");
    }

    #[test]
    fn what_is_marked_is_filled_in_as_its_text_asks() {
        let marked = mark("For Ada & <Co>, with thanks", &client());
        assert!(!marked.contains("Ada"));
        let page = format!("{marked}|{}", address_mark(0));
        assert_eq!(fill(&page, Markup::Text, &client()), "For Ada & <Co>, with thanks|1 \"Quay\"");
        assert_eq!(fill(&page, Markup::Html, &client()), "For Ada &amp; &lt;Co&gt;, with thanks|1 &quot;Quay&quot;");
        assert_eq!(fill(&page, Markup::Json, &client()), "For Ada & <Co>, with thanks|1 \\\"Quay\\\"");
        let nobody = BookedClient { name: FORGOTTEN.to_owned(), address: Vec::new() };
        assert_eq!(fill(&page, Markup::Text, &nobody), "For (forgotten), with thanks|");
        assert_eq!(
            [Markup::of("quote.html"), Markup::of("quote.json"), Markup::of("quote.txt")],
            [Markup::Html, Markup::Json, Markup::Text]
        );
    }
}
