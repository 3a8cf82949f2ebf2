//! What the header declares, read out of the header itself.

use std::collections::BTreeMap;

/// A parameter or a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Typed {
    /// `const hilum_mass *`, `double`.
    pub(crate) is: String,
    pub(crate) name: String,
    /// Of an array.
    pub(crate) many: Option<usize>,
}

#[derive(Clone, Debug)]
pub(crate) struct Function {
    pub(crate) returns: String,
    pub(crate) name: String,
    pub(crate) parameters: Vec<Typed>,
}

#[derive(Debug, Default)]
pub(crate) struct Declared {
    pub(crate) functions: Vec<Function>,
    pub(crate) structures: BTreeMap<String, Vec<Typed>>,
}

/// The header without comments and lines of the preprocessor.
fn code(header: &str) -> String {
    let mut text = String::new();
    let mut rest = header;
    while let Some(at) = rest.find("/*") {
        text.push_str(&rest[..at]);
        rest = rest[at..].split_once("*/").unwrap().1;
    }
    text.push_str(rest);
    let lines = text.lines().map(|line| line.split("//").next().unwrap_or_default());
    lines.filter(|line| !line.trim_start().starts_with('#')).collect::<Vec<_>>().join("\n")
}

fn typed(text: &str) -> Typed {
    let text = text.trim();
    let (text, many) = match text.split_once('[') {
        Some((text, number)) => (text, Some(number.trim_end_matches(']').parse().unwrap())),
        None => (text, None),
    };
    let at = text.rfind([' ', '*']).unwrap() + 1;
    Typed { is: text[..at].trim().to_owned(), name: text[at..].to_owned(), many }
}

pub(crate) fn declared(header: &str) -> Declared {
    let code = code(header);
    let mut declared = Declared::default();
    let mut rest = code.as_str();
    while let Some(at) = rest.find("typedef struct {") {
        let body = &rest[at..];
        let (fields, after) = body.split_once('{').unwrap().1.split_once('}').unwrap();
        let (name, after) = after.split_once(';').unwrap();
        let fields = fields.split(';').filter(|field| !field.trim().is_empty()).map(typed).collect();
        declared.structures.insert(name.trim().to_owned(), fields);
        rest = after;
    }
    for statement in code.split(';') {
        let Some((head, parameters)) = statement.split_once('(') else { continue };
        let head = typed(head.trim().trim_start_matches('{').rsplit('}').next().unwrap().trim());
        let parameters = parameters.trim().trim_end_matches(')');
        let parameters = match parameters {
            "void" => Vec::new(),
            _ => parameters.split(',').map(typed).collect(),
        };
        declared.functions.push(Function { returns: head.is, name: head.name, parameters });
    }
    declared
}

#[test]
fn a_declaration_is_read() {
    let text = "/* x; */\ntypedef struct {\n  /// A field.\n  uint64_t opaque[3];\n} hilum_a;\n#define X 1\n\
                int32_t hilum_b(const hilum_a *a,\n   double c);\nconst char *hilum_d(void);\n";
    let declared = declared(text);
    assert_eq!(declared.structures["hilum_a"], [typed("uint64_t opaque[3]")]);
    let names: Vec<&str> = declared.functions.iter().map(|function| function.name.as_str()).collect();
    assert_eq!(names, ["hilum_b", "hilum_d"]);
    assert_eq!(declared.functions[0].parameters, [typed("const hilum_a *a"), typed("double c")]);
    assert_eq!(declared.functions[1].returns, "const char *");
}
