//! Writes a call of every C function, out of the committed header: arguments from the attack's bytes, lists of exactly the
//! length that is told, results filled with a pattern.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a build stops at the first surprise"
)]

use std::fmt::Write;

#[path = "../../bindings/c/tests/c/prototype.rs"]
#[allow(dead_code, reason = "the tests of the C library use the rest")]
mod prototype;

use prototype::{Declared, Function, Typed};

const HEADER: &str = "../../bindings/c/include/hilum.h";
/// Called by hand: their arguments point to structures that point further.
const BY_HAND: [&str; 3] = ["hilum_batch_plan", "hilum_plan_json", "hilum_account_json"];
/// Lists, in functions that do not take everything by lists.
const LISTS: [&str; 14] = [
    "orders", "sizes", "products", "rates", "parts", "shifts", "catches", "added", "lost", "liquids",
    "storage", "partners", "samples", "doses",
];

fn main() {
    println!("cargo:rerun-if-changed={HEADER}");
    println!("cargo:rerun-if-changed=../../bindings/c/tests/c/prototype.rs");
    let header = std::fs::read_to_string(HEADER).unwrap();
    let declared = prototype::declared(&header);
    let to = std::path::Path::new(&std::env::var("OUT_DIR").unwrap()).join("calls.rs");
    std::fs::write(to, written(&declared)).unwrap();
}

fn written(declared: &Declared) -> String {
    let mut text = String::new();
    structures(&mut text, declared);
    text.push_str("unsafe extern \"C\" {\n");
    for function in &declared.functions {
        let parameters: Vec<String> =
            function.parameters.iter().map(|it| format!("r#{}: {}", it.name, rust(&it.is))).collect();
        let _ = writeln!(
            text,
            "pub(super) fn {}({}) -> {};",
            function.name,
            parameters.join(", "),
            rust(&function.returns)
        );
    }
    text.push_str("}\n");
    let called: Vec<&Function> = declared
        .functions
        .iter()
        .filter(|function| function.returns == "int32_t" && !function.parameters.is_empty())
        .filter(|function| !BY_HAND.contains(&function.name.as_str()))
        // Columns within a structure: the tests of the functions for rows give them.
        .filter(|function| !function.parameters.iter().any(|it| points_further(declared, &it.is)))
        .collect();
    for function in &called {
        call(&mut text, function);
    }
    let names: Vec<String> = called.iter().map(|function| format!("call_{}", function.name)).collect();
    let _ = writeln!(
        text,
        "pub(super) const CALLS: &[fn(&mut Source<'_, '_>) -> Result<()>] = &[{}];",
        names.join(", ")
    );
    text
}

fn points_further(declared: &Declared, is: &str) -> bool {
    let of = is.trim_end_matches('*').trim().trim_start_matches("const ");
    let mut structures = declared.structures.iter();
    structures.any(|(name, fields)| name == of && fields.iter().any(|field| field.is.ends_with('*')))
}

fn structures(text: &mut String, declared: &Declared) {
    for (name, fields) in &declared.structures {
        let points = fields.iter().any(|field| field.is.ends_with('*'));
        let _ = writeln!(text, "#[repr(C)] #[derive(Clone, Copy)] pub(super) struct {name} {{");
        for field in fields {
            let is = rust(&field.is);
            let is = field.many.map_or_else(|| is.clone(), |many| format!("[{is}; {many}]"));
            let _ = writeln!(text, "pub(super) r#{}: {is},", field.name);
        }
        text.push_str("}\n");
        if points {
            continue;
        }
        let made: Vec<String> =
            fields.iter().map(|field| format!("r#{0}: Value::made(from)?", field.name)).collect();
        let sound: Vec<String> =
            fields.iter().map(|field| format!("self.r#{}.is_sound()", field.name)).collect();
        let opaque = fields.iter().any(|field| field.name == "opaque");
        let made = if opaque {
            "Self { opaque: [0; _] }".replace('_', &fields[0].many.unwrap().to_string())
        } else {
            format!("Self {{ {} }}", made.join(", "))
        };
        let sound = if opaque { "true".to_owned() } else { sound.join(" && ") };
        let _ = writeln!(
            text,
            "impl Value for {name} {{
                const NAME: &'static str = {name:?};
                fn made(from: &mut Source<'_, '_>) -> Result<Self> {{ let _ = &from; Ok({made}) }}
                fn is_sound(&self) -> bool {{ {sound} }}
            }}"
        );
    }
}

fn rust(is: &str) -> String {
    // The first declaration stands behind `extern "C" {`.
    match is.rsplit('{').next().unwrap().trim() {
        "double" => "f64".into(),
        "int32_t" => "i32".into(),
        "uint32_t" => "u32".into(),
        "int8_t" => "i8".into(),
        "uint64_t" => "u64".into(),
        "size_t" => "usize".into(),
        // Any byte may stand where a result will be written.
        "bool" | "char" => "u8".into(),
        is => match is.strip_suffix('*').map(str::trim) {
            Some(to) => match to.strip_prefix("const ") {
                Some(to) => format!("*const {}", rust(to)),
                None => format!("*mut {}", rust(to)),
            },
            None => is.into(),
        },
    }
}

fn call(text: &mut String, function: &Function) {
    let _ = writeln!(text, "fn call_{}(from: &mut Source<'_, '_>) -> Result<()> {{", function.name);
    for number in function.parameters.iter().filter(|it| it.is == "size_t" && it.name.starts_with('n')) {
        let _ = writeln!(text, "let {} = from.count()?;", number.name);
    }
    if let Some(number) = function.parameters.iter().find(|it| it.is == "size_t" && it.name == "index") {
        let _ = writeln!(text, "let {} = from.index()?;", number.name);
    }
    let mut arguments = Vec::new();
    let mut checks = String::new();
    for (place, parameter) in function.parameters.iter().enumerate() {
        arguments.push(argument(text, &mut checks, function, place, parameter));
    }
    let _ = writeln!(
        text,
        "// SAFETY: every pointer is NULL or points to as many values as are told.
        let status = unsafe {{ {}({}) }};
        from.told(status);
        {checks}
        Ok(())
        }}",
        function.name,
        arguments.join(", ")
    );
}

fn argument(
    text: &mut String,
    checks: &mut String,
    function: &Function,
    place: usize,
    parameter: &Typed,
) -> String {
    let name = format!("a{place}");
    let all_lists = function.name.ends_with("_n") || function.name.ends_with("_rows");
    let with = |name: &str| function.parameters.iter().any(|it| it.name == name);
    let count = match parameter.name.as_str() {
        "added" => "n_added",
        "lost" => "n_lost",
        "work" if with("n_added") => "n_added + n_lost",
        _ => "n",
    };
    let is = parameter.is.as_str();
    if is == "const char *" {
        let _ = writeln!(text, "let {name} = from.text()?;");
        return format!("from.lent({name}.as_ptr())?");
    }
    if is == "size_t" {
        let text_before = place.checked_sub(1).map(|before| format!("a{before}.len()"));
        return if parameter.name == "length" { text_before.unwrap() } else { parameter.name.clone() };
    }
    if let Some(of) = is.strip_suffix('*').map(str::trim) {
        let (of, constant) = of.strip_prefix("const ").map_or((of, false), |of| (of, true));
        let is_rust = rust(of);
        let counted = parameter.name == "work"
            || (all_lists && parameter.name != "bad")
            || (constant && LISTS.contains(&parameter.name.as_str()));
        let counted = counted && with("n") | with("n_added");
        if constant {
            let many = if counted { count } else { "1" };
            let _ = writeln!(text, "let {name} = from.values::<{is_rust}>({many})?;");
            return format!("from.lent({name}.as_ptr())?");
        }
        if function.name.ends_with("_feed") && parameter.name == "monitor" {
            let _ = writeln!(text, "let mut {name} = from.values::<{is_rust}>(1)?;");
            let _ = writeln!(checks, "from.keep(&{name}, status);");
            return format!("{name}.as_mut_ptr()");
        }
        let many = if counted { count } else { "1" };
        let _ = writeln!(text, "let mut {name} = filled::<{is_rust}>({many});");
        match parameter.name.as_str() {
            "work" => {}
            "bad" => {
                let _ = write!(checks, "Source::bad(status, {name}[0], n);");
            }
            _ => {
                let _ = write!(checks, "from.written(&{name}, status);");
            }
        }
        return format!("from.lent_mut({name}.as_mut_ptr())?");
    }
    format!("from.value::<{}>()?", rust(is))
}
