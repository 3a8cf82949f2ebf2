//! The program.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::accepted::ACCEPTED;
use super::good::{ENTRIES, ESPECIALLY, MADE, OPTIONAL, VALUES, WRITTEN};
use crate::prototype::{Declared, Function, Typed};

/// What a parameter is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Role {
    /// A number or a structure of one field.
    Value,
    /// A structure, or the first of a list.
    Object,
    /// Working memory.
    Work,
    /// What is changed: a running monitor, the room of a plan.
    Changed,
    Text,
    Length,
    Count,
    /// Where the first bad element of a list is told; may be NULL.
    Bad,
    Result,
}

fn role(function: &Function, parameter: &Typed) -> Role {
    let starts = function.name.ends_with("_start");
    match parameter.is.as_str() {
        "const char *" => Role::Text,
        "size_t" if parameter.name == "length" => Role::Length,
        "size_t" if parameter.name != "index" => Role::Count,
        "size_t *" => Role::Bad,
        "hilum_work *" => Role::Work,
        "hilum_batch_room *" => Role::Changed,
        is if is.starts_with("hilum_monitor_") && !starts => Role::Changed,
        is if is.starts_with("const ") => Role::Object,
        is if is.ends_with('*') => Role::Result,
        _ => Role::Value,
    }
}

fn pointed(is: &str) -> &str {
    is.trim_start_matches("const ").trim_end_matches(" *")
}

fn find(table: &[(&'static str, &'static str)], name: &str) -> Option<&'static str> {
    table.iter().find(|(own, _)| *own == name).map(|(_, value)| *value)
}

/// The quantity that a function of a quantity's family is of.
fn family(function: &str) -> Option<(&'static str, &'static str, &'static str, &'static str)> {
    let is = |of: &str| {
        ["_from", "_in", "_read", "_from_n", "_in_n"].iter().any(|end| function == format!("{of}{end}"))
    };
    WRITTEN.iter().copied().find(|(of, ..)| is(of))
}

fn on_bus(function: &str) -> Option<&'static str> {
    let of = function.strip_suffix("_to_bus").or_else(|| function.strip_suffix("_from_bus"))?;
    find(ENTRIES, of)
}

/// A good value of a parameter, as a C expression.
fn good(function: &Function, parameter: &Typed) -> String {
    let name = (function.name.as_str(), parameter.name.as_str());
    if let Some((.., value)) = ESPECIALLY.iter().find(|(of, own, _)| (*of, *own) == name) {
        return (*value).to_owned();
    }
    let is = parameter.is.as_str();
    match (role(function, parameter), parameter.name.as_str()) {
        (Role::Value, "unit") if is == "int32_t" => family(name.0).unwrap().1.into(),
        (Role::Value, "per_unit") => family(name.0).unwrap().2.into(),
        (Role::Value, "ddi") => on_bus(name.0).unwrap_or("31").into(),
        (Role::Value, "steps") => "300000".into(),
        (Role::Value, "objective") => "HILUM_LEAST_LEFTOVER".into(),
        (Role::Value, "index") => "3".into(),
        (Role::Value, _) if is == "double" => "0.5".into(),
        (Role::Value, _) if is.starts_with("uint") => "4".into(),
        (Role::Value, _) => format!("one_{is}"),
        (Role::Object | Role::Changed, _) => format!("&one_{}", pointed(is)),
        (Role::Work, _) => "work".into(),
        (Role::Bad, _) => "&bad".into(),
        (Role::Text, _) => format!("\"{}\"", family(name.0).unwrap().3),
        (Role::Length, _) => family(name.0).unwrap().3.len().to_string(),
        (Role::Count, _) => "1".into(),
        (Role::Result, _) => format!("&result_{}", parameter.name),
    }
}

/// A spoilt value: which parameter or field, how, and what must come of it.
struct Spoilt {
    path: String,
    how: &'static str,
    /// Statements before the call.
    before: String,
    /// The argument instead of the good one.
    argument: String,
    /// The kinds that will do.
    kinds: (i32, i32),
}

const NUMBERS: &[(&str, &str, (i32, i32))] = &[
    ("nan", "NAN", (100, 100)),
    ("infinite", "INFINITY", (100, 100)),
    ("huge", "1e40", (101, 199)),
    ("negative", "-1", (101, 199)),
];

/// The numbers and pointers in a structure, by their paths.
fn leaves(structures: &BTreeMap<String, Vec<Typed>>, of: &str, path: &str, into: &mut Vec<(String, String)>) {
    for field in &structures[of] {
        let element = if field.many.is_some() { "[0]" } else { "" };
        let path = format!("{path}.{}{element}", field.name);
        if structures.contains_key(&field.is) {
            leaves(structures, &field.is, &path, into);
        } else if field.name != "opaque" {
            into.push((path, field.is.clone()));
        }
    }
}

fn spoilt_field(of: &str, path: &str, is: &str, pointer: &str, n: usize) -> Vec<Spoilt> {
    let one = |how, value: &str, kinds| Spoilt {
        path: path.to_owned(),
        how,
        before: format!(
            "{of} spoilt[{n}]; memcpy(spoilt, {pointer}, sizeof spoilt); spoilt[0]{path} = {value};"
        ),
        argument: "spoilt".to_owned(),
        kinds,
    };
    match is {
        "double" => NUMBERS.iter().map(|(how, value, kinds)| one(how, value, *kinds)).collect(),
        "int32_t" => vec![one("choice", "99999", (3, 3)), one("choice", "-1", (3, 3))],
        _ if is.ends_with('*') => vec![one("null", "NULL", (1, 1))],
        _ => Vec::new(),
    }
}

fn spoilt(declared: &Declared, function: &Function, parameter: &Typed) -> Vec<Spoilt> {
    let null = || Spoilt {
        path: parameter.name.clone(),
        how: "null",
        before: String::new(),
        argument: "NULL".into(),
        kinds: (1, 1),
    };
    let plain = |how, argument: &str, kinds| Spoilt {
        path: parameter.name.clone(),
        how,
        before: String::new(),
        argument: argument.to_owned(),
        kinds,
    };
    let is = parameter.is.as_str();
    let optional = OPTIONAL.contains(&(function.name.as_str(), parameter.name.as_str()));
    match role(function, parameter) {
        Role::Result | Role::Work | Role::Changed => vec![null()],
        Role::Text => vec![
            null(),
            plain(
                "not utf-8",
                "\"\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\\xff\"",
                (4, 4),
            ),
        ],
        Role::Length => vec![plain("huge", "SIZE_MAX", (5, 5)), plain("none", "0", (9, 299))],
        Role::Count => vec![plain("huge", "SIZE_MAX / 2", (5, 5))],
        // Optional as a pair.
        Role::Object if is == "const int32_t *" => {
            let number = |how, value: &str| {
                let before = format!("int32_t spoilt = {value};");
                Spoilt {
                    path: parameter.name.clone(),
                    how,
                    before,
                    argument: "&spoilt".into(),
                    kinds: (3, 3),
                }
            };
            vec![null(), number("choice", "99999"), number("choice", "-1")]
        }
        Role::Object if is == "const double *" => {
            let numbers = NUMBERS.iter().map(|(how, value, kinds)| {
                let before = format!("double spoilt = {value};");
                Spoilt {
                    path: parameter.name.clone(),
                    how,
                    before,
                    argument: "&spoilt".into(),
                    kinds: *kinds,
                }
            });
            std::iter::once(null()).chain(numbers).collect()
        }
        Role::Object => {
            let of = pointed(is);
            let mut all = if optional { Vec::new() } else { vec![null()] };
            let mut fields = Vec::new();
            leaves(&declared.structures, of, "", &mut fields);
            // The list of counts has two items, every other one.
            let n = if parameter.name == "samples" { 2 } else { 1 };
            for (path, is) in fields {
                all.extend(spoilt_field(of, &path, &is, &good(function, parameter), n));
            }
            if MADE.iter().any(|(made, _)| *made == of) {
                let before = format!("{of} spoilt; memset(&spoilt, 0, sizeof spoilt);");
                let argument = "&spoilt".to_owned();
                all.push(Spoilt {
                    path: parameter.name.clone(),
                    how: "not made",
                    before,
                    argument,
                    kinds: (7, 7),
                });
            }
            all
        }
        // Below the line of a unit, where 0 and less have a kind of their own.
        Role::Value if parameter.name == "per" => vec![
            plain("nan", "NAN", (100, 100)),
            plain("infinite", "INFINITY", (100, 100)),
            plain("huge", "1e40", (103, 103)),
            plain("none", "0", (214, 214)),
            plain("negative", "-1", (214, 214)),
        ],
        Role::Value if is == "double" => {
            NUMBERS.iter().map(|(how, value, kinds)| plain(how, value, *kinds)).collect()
        }
        Role::Value if is == "int32_t" => {
            let kinds = if parameter.name == "steps" { (101, 199) } else { (2, 8) };
            let mut all = vec![plain("choice", "-1", kinds), plain("choice", "99999999", kinds)];
            if parameter.name == "steps" {
                all.pop();
            }
            all
        }
        Role::Value if is.starts_with("hilum_") => {
            let value = |value: &str| format!("({is}){{{value}}}");
            NUMBERS.iter().map(|(how, number, kinds)| plain(how, &value(number), *kinds)).collect()
        }
        Role::Bad | Role::Value => Vec::new(),
    }
}

/// Whether it tells for each row what is wrong with it.
fn rows(function: &Function) -> bool {
    function.name.ends_with("_rows")
}

/// A row's status counts as the function's; what a refused row shows is 0.
fn rows_judged(results: &[&Typed], untouched: &str) -> (String, &'static str) {
    let shown = results.iter().filter(|result| result.name != "codes");
    let blank: Vec<String> = shown.map(|result| format!("BLANK(result_{})", result.name)).collect();
    let blank = blank.join(" && ");
    (format!("(row ? {blank} : {untouched})"), " row = status == HILUM_OK; if (row) status = result_codes;")
}

fn test(text: &mut String, declared: &Declared, function: &Function) {
    let arguments: Vec<String> =
        function.parameters.iter().map(|parameter| good(function, parameter)).collect();
    let results: Vec<&Typed> =
        function.parameters.iter().filter(|parameter| role(function, parameter) == Role::Result).collect();
    let _ = writeln!(text, "static void t_{0}(void) {{\n    name = \"{0}\";", function.name);
    for result in &results {
        let _ = writeln!(text, "    {} result_{};", pointed(&result.is), result.name);
    }
    let fill: Vec<String> = results.iter().map(|result| format!("FILL(result_{});", result.name)).collect();
    let fill = fill.join(" ");
    let untouched: Vec<String> =
        results.iter().map(|result| format!("UNTOUCHED(result_{})", result.name)).collect();
    let untouched = untouched.join(" && ");
    let (untouched, row) = if rows(function) { rows_judged(&results, &untouched) } else { (untouched, "") };
    let _ = writeln!(
        text,
        "    {fill} status = {}({});{row} good({untouched});",
        function.name,
        arguments.join(", ")
    );
    for (index, parameter) in function.parameters.iter().enumerate() {
        for spoilt in spoilt(declared, function, parameter) {
            let mut arguments = arguments.clone();
            arguments[index].clone_from(&spoilt.argument);
            let call = format!("{}({})", function.name, arguments.join(", "));
            let place = format!("{} {}", parameter.name, spoilt.path);
            let (least, most) = spoilt.kinds;
            let accepted =
                ACCEPTED.iter().any(|row| row.is(&function.name, &parameter.name, &spoilt.path, spoilt.how));
            let judge = if accepted { "accepted" } else { "refused" };
            let _ = writeln!(
                text,
                "    {{ {} {fill} status = {call};{row} {judge}(\"{place}\", \"{}\", {least}, {most}, {untouched}); }}",
                spoilt.before, spoilt.how
            );
        }
    }
    text.push_str("}\n\n");
}

const FRAME: &str = r#"#include <hilum.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *name;
static int calls, wrong;
static int32_t status;
static size_t bad;
static bool row;
static const double one_double = 0.5;
static const int32_t one_int32_t = 2, none_int32_t[2] = {0, 0}, from_int32_t[2] = {0, 1};
static hilum_work work[60000];
static hilum_batch_mix mixes[50];
static hilum_batch_portion portions[50];

/* Every byte of a result as it was filled. */
static bool all_are(unsigned char byte, const void *what, size_t size) {
    const unsigned char *bytes = what;
    for (size_t i = 0; i < size; i++)
        if (bytes[i] != byte) return false;
    return true;
}
#define FILL(result) memset(&(result), 0xA5, sizeof(result))
#define UNTOUCHED(result) all_are(0xA5, &(result), sizeof(result))
#define BLANK(result) all_are(0, &(result), sizeof(result))

static void tell(const char *what, const char *how, const char *why) {
    wrong++;
    printf("%s: %s %s gives %d (%s %s): %s\n", name, what, how, (int)status, hilum_status_subject(status),
           hilum_status_message(status), why);
}
static void good(bool untouched) {
    calls++;
    if (status != HILUM_OK || untouched) tell("good values", "", "must be calculated");
}
static void refused(const char *what, const char *how, int32_t least, int32_t most, bool untouched) {
    calls++;
    if (HILUM_KIND(status) < least || HILUM_KIND(status) > most) tell(what, how, "must be refused");
    else if (!untouched) tell(what, how, "must leave the results as they were");
}
void accepted(const char *what, const char *how, int32_t least, int32_t most, bool untouched);
void accepted(const char *what, const char *how, int32_t least, int32_t most, bool untouched) {
    (void)least; (void)most;
    calls++;
    if (status != HILUM_OK || untouched) tell(what, how, "is in the list of what is accepted");
}

"#;

pub(super) fn program(declared: &Declared) -> String {
    let mut text = FRAME.to_owned();
    for (is, value) in VALUES {
        let constant = if *is == "hilum_batch_room" { "" } else { "const " };
        let _ = writeln!(text, "static {constant}{is} one_{is} = {value};");
    }
    for (is, _) in MADE {
        let _ = writeln!(text, "static {is} one_{is};");
    }
    text.push_str("static hilum_used_mass light[1];\nstatic const hilum_sample samples[2] = {{{0}, 1e6}, {{86400}, 1e5}};\n\n");
    let tested: Vec<&Function> = declared
        .functions
        .iter()
        .filter(|function| function.returns == "int32_t" && !function.parameters.is_empty())
        .filter(|function| !function.name.ends_with("_json"))
        .collect();
    for function in &tested {
        test(&mut text, declared, function);
    }
    text.push_str(
        "int main(void) {\n    hilum_mass_reading lightly = {{5}, {0.1}};\n    int32_t made = 0;\n",
    );
    for (_, call) in MADE {
        let _ = writeln!(text, "    made |= {call};");
    }
    text.push_str("    made |= hilum_used_mass_of_reading(&lightly, &light[0]);\n    if (made) return 2;\n");
    for function in tested {
        let _ = writeln!(text, "    t_{}();", function.name);
    }
    text.push_str("    printf(\"%d calls, %d wrong\\n\", calls, wrong);\n    return wrong != 0;\n}\n");
    text
}
