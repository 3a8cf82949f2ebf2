//! Invented days of a treating shed, of any size.

use serde_json::{Value, json};

/// How much there is to plan.
pub(crate) struct Shed {
    pub(super) orders: u32,
    pub(super) treatments: u32,
    pub(super) tanks: u32,
    pub(super) shifts: u32,
}

impl Shed {
    pub(crate) const SMALL: Self = Self { orders: 3, treatments: 4, tanks: 2, shifts: 1 };

    /// The job as JSON: the shifts are filled to two thirds, however many orders share them.
    pub(crate) fn text(&self) -> String {
        let orders: Vec<Value> = (0..self.orders).map(|n| self.order(n)).collect();
        let treatments: Vec<Value> = (0..self.treatments).map(|n| self.treatment(n)).collect();
        let tanks: Vec<Value> = (0..self.tanks).map(tank).collect();
        let work: Vec<Value> = (0..self.shifts).map(shift).collect();
        let job = json!({
            "format": 1, "title": "Quillwater treating shed", "units": "us",
            "orders": orders, "treatments": treatments, "tanks": tanks, "work": work,
            "treater": {
                "seed_flow": "300 lb/min", "utilisation": "80 %",
                "changeover": format!("{:.2} min", 30.0 * f64::from(self.shifts) / f64::from(self.orders)),
            },
            "after": { "storage": [ { "for": "20 d", "at": "47 degF" } ] },
        });
        job.to_string()
    }

    fn order(&self, n: u32) -> Value {
        // Ten hours a shift at 240 lb/min, two thirds of it.
        let share = 96_000.0 * f64::from(self.shifts) / f64::from(self.orders);
        json!({
            "order": format!("Q-{n}"), "lot": format!("FERN-{n}"), "crop": "soybean",
            "amount": format!("{:.1} lb", share * (0.7 + 0.02 * f64::from(n % 30))),
            "size": format!("{} seeds/lb", 2700 + 10 * (n % 20)),
            "germination": "92 %", "sowing": { "rate": "136000 seeds/ac" },
        })
    }

    fn treatment(&self, n: u32) -> Value {
        if n == 0 {
            return living();
        }
        let tank = 1 + (n - 1) % (self.tanks - 1).max(1);
        json!({
            "product": format!("Product {n}"), "tank": format!("Tank {tank}"),
            "rate": format!("{:.2} fl oz/cwt", 0.3 + 0.05 * f64::from(n)), "density": "1.1 kg/L",
            "with_living": [ { "living": "Live soybean inoculant", "same_seed": true, "life": "45 d" } ],
            "packs": [ { "pack": "jug", "parts": [ { "part": "jug", "fill": "2.5 gal" } ] } ],
        })
    }
}

fn living() -> Value {
    let pack = |name: &str, units: u32, ounces: u32| {
        json!({
            "pack": name, "covers": format!("{units} units"), "price": f64::from(units) * 1.7,
            "parts": [ { "part": "culture", "fill": format!("{ounces} fl oz") } ],
        })
    };
    json!({
        "product": "Live soybean inoculant", "tank": "Tank 0",
        "rate": "1.15 fl oz/unit", "label_unit": "140000 seeds", "density": "1.02 kg/L",
        "living": {
            "titre": "8e9 CFU/mL", "recovery": "70 %", "minimum_at_planting": "1e5 CFU/seed",
            "pot_life": "5 h", "on_seed_life": "75 d",
            "survival": { "model": "log_linear", "decimal_reduction": "38 d", "at": "50 degF", "z": "32.4 delta_degF" },
        },
        "packs": [ pack("shed set", 240, 276), pack("farm set", 90, 104) ],
    })
}

fn tank(n: u32) -> Value {
    json!({
        "tank": format!("Tank {n}"), "capacity": "40 gal", "hold_up": "0.3 gal", "mixing": "12 min", "agitated": true,
        "water": "0.7 fl oz/cwt",
    })
}

fn shift(n: u32) -> Value {
    let day = 12 + n;
    json!({ "from": format!("2027-04-{day:02}T07:00:00-05:00"), "to": format!("2027-04-{day:02}T17:00:00-05:00") })
}
