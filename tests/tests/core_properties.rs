//! What holds for seed, rates, active ingredient and limits whatever the numbers.
//!
//! Mixes, pumps, packs and the bus are in `shed_properties`, survival in `viability_properties`, text in
//! `text_properties`.
#![expect(clippy::unwrap_used, reason = "a test may panic")]

use hilum::Error;
use hilum::limit::{SeasonLimit, total_on_seed};
use hilum::quantity::{
    Area, Mass, MassPerArea, MassPerVolume, Measure, Ratio, Seeds, SeedsPerArea, SeedsPerMass, Volume,
    VolumePerMass,
};
use hilum::rate::{
    Active, ActiveContent, ActivePerSeed, Agreement, Content, Density, Dry, Liquid, PerMass, PerSeed,
    RatePerArea, RatePerMass, RatePerSeed,
};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds, pure_live_seed};
use hilum_tests::check::{Code, Refusal};
use proptest::prelude::*;

/// Any size that a checked number may have.
fn any_size() -> impl Strategy<Value = f64> {
    (-29.9_f64..29.9).prop_map(hilum::math::exp10)
}
/// A size that the trade meets, in base units.
fn usual() -> impl Strategy<Value = f64> {
    (-9.0_f64..9.0).prop_map(hilum::math::exp10)
}
fn some_share() -> impl Strategy<Value = f64> {
    1e-6_f64..=1.0
}

fn q<Q: Measure>(base: f64) -> Q {
    Q::from_base(base)
}
fn share(of: f64) -> Share {
    Share::new(q(of)).unwrap()
}
fn size(of: f64) -> SeedSize {
    SeedSize::new(q(of)).unwrap()
}
fn sown(of: f64) -> Sown {
    Sown::new(q(of)).unwrap()
}
fn rate(of: f64) -> RatePerMass {
    PerMass::new(q(of)).unwrap()
}
fn dose(of: f64) -> RatePerSeed {
    PerSeed::new(q(of)).unwrap()
}
fn on_seed(of: f64) -> ActivePerSeed {
    PerSeed::new(q(of)).unwrap()
}

/// What became of a number: its bits, or why it was refused.
fn fate(result: Result<f64, Error>) -> Result<u64, Code> {
    result.map(f64::to_bits).map_err(|error| Refusal::from(error).code().unwrap())
}

/// Within four units of the last place: two operations there, two back, each rounded once.
fn same(one: f64, other: f64) -> bool {
    (one - other).abs() <= 4.0 * f64::EPSILON * one.abs().max(other.abs())
}
fn same_quantity<Q: Measure>(one: Q, other: Q) -> bool {
    same(one.to_base(), other.to_base())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    // ---- There and back ----

    #[test]
    fn seed_comes_back_as_it_went(kg in any_size(), per_kg in any_size(), unit in any_size(), m2 in any_size()) {
        let size = size(per_kg);
        let mass: Mass = q(kg);
        prop_assert!(same_quantity(size.mass_of(size.count_in(mass).unwrap()).unwrap_or(mass), mass));
        prop_assert!(same_quantity(SeedSize::of_thousand(size.thousand()).map_or(q(per_kg), SeedSize::get), size.get()));
        prop_assert!(same_quantity(SeedSize::of_seed(size.seed_mass()).map_or(q(per_kg), SeedSize::get), size.get()));
        for unit in [SeedUnit::Count(UnitOfSeeds::new(q(unit)).unwrap()), SeedUnit::Mass(UnitOfMass::new(q(unit)).unwrap())] {
            prop_assert!(same(unit.units_in(mass, size).unwrap() * unit.mass(size).to_base(), kg));
        }
        let area: Area = q(m2);
        let sown = sown(per_kg);
        prop_assert!(same_quantity(sown.area(sown.seeds_for(area).unwrap()).unwrap_or(area), area));
    }

    #[test]
    fn what_is_sown_comes_back_as_it_went(
        n in usual(), per_kg in usual(), germination in some_share(), emergence in some_share(),
    ) {
        let (size, sown) = (size(per_kg), sown(n));
        prop_assert!(same_quantity(Sown::by_mass(sown.mass_per_area(size), size).unwrap().get(), sown.get()));
        let needed = Sown::for_stand(sown, share(germination), share(emergence)).unwrap();
        prop_assert!(same(needed.get().to_base() * germination * emergence, n));
    }

    #[test]
    fn a_dose_is_the_same_in_every_basis(
        base in usual(), per_kg in usual(), unit in usual(), bushel in usual(), n in usual(),
    ) {
        let (rate, size, sown) = (rate(base), size(per_kg), sown(n));
        let (unit, bushel) = (UnitOfSeeds::new(q(unit)).unwrap(), Bushel::new(q(bushel)).unwrap());
        let per_seed = rate.per_seed(size);
        prop_assert!(same_quantity(per_seed.per_mass(size).get(), rate.get()));
        prop_assert!(same_quantity(RatePerMass::from_bushel(rate.per_bushel(bushel), bushel).unwrap().get(), rate.get()));
        prop_assert!(same_quantity(RatePerSeed::from_unit(per_seed.per_unit(unit), unit).unwrap().get(), per_seed.get()));
        prop_assert!(same_quantity(per_seed.per_area(sown).per_seed(sown).get(), per_seed.get()));
        prop_assert!(same_quantity(rate.implied_size(per_seed).get(), size.get()));
        // What is needed for a mass is what is needed for the seeds in it.
        let seed: Mass = q(n);
        let needed = rate.needed(seed).unwrap();
        prop_assert!(same_quantity(per_seed.needed(size.count_in(seed).unwrap()).unwrap(), needed));
        prop_assert!(same_quantity(rate.treats(needed).unwrap(), seed));
    }

    #[test]
    fn product_and_active_come_back_as_they_went(
        base in usual(), per_m3 in 1e-3_f64..5e3, kg_per_m3 in 100.0_f64..5e3, by_mass in some_share(),
    ) {
        let (liquid, density) = (rate(base), Density::new(q(kg_per_m3)).unwrap());
        let content = ActiveContent::new(q(per_m3)).unwrap();
        prop_assert!(same_quantity(liquid.active(content).in_liquid(content).get(), liquid.get()));
        prop_assert!(same_quantity(liquid.weighed(density).measured(density).get(), liquid.get()));
        let dry: PerMass<Dry> = PerMass::new(q(base)).unwrap();
        let active = dry.active(share(by_mass)).unwrap();
        prop_assert!(same_quantity(active.in_dry(share(by_mass)).unwrap().get(), dry.get()));
        // A liquid's active by its share and its weight is that by its content per volume.
        let content = Content::ByMass(share(by_mass)).per_volume(Some(density)).unwrap();
        let weighed = liquid.weighed(density).active(share(by_mass)).unwrap();
        prop_assert!(same_quantity(liquid.active(content).get(), weighed.get()));
        let back = Content::PerVolume(content).by_mass(Some(density)).unwrap_or(Share::WHOLE);
        prop_assert!(same(back.number(), by_mass));
    }

    // ---- Scaling: twice as much is exactly twice as much, as doubling only moves the binary point ----

    #[test]
    fn twice_as_much_is_twice_as_much(base in usual(), per_kg in usual(), kg in usual(), of in 0.0_f64..=0.5) {
        let twice = |one: f64, two: f64| (2.0 * one).to_bits() == two.to_bits();
        let (size, seed) = (size(per_kg), q::<Mass>(kg));
        let seeds = |kg| size.count_in(q(kg)).unwrap().to_base();
        prop_assert!(twice(seeds(kg), seeds(2.0 * kg)));
        let needed = |base| rate(base).needed(seed).unwrap().to_base();
        prop_assert!(twice(needed(base), needed(2.0 * base)));
        let per_seed = |base| rate(base).per_seed(size).get().to_base();
        prop_assert!(twice(per_seed(base), per_seed(2.0 * base)));
        let live = |of| pure_live_seed(share(of), share(0.9)).number();
        prop_assert!(twice(live(of), live(2.0 * of)));
        // Seed of twice as many seeds per mass takes half the dose per seed, and sows twice the area.
        prop_assert!(twice(rate(base).per_seed(self::size(2.0 * per_kg)).get().to_base(), per_seed(base)));
        let area = |n| sown(n).area(q::<Seeds>(kg)).unwrap().to_base();
        prop_assert!(twice(area(2.0 * base), area(base)));
    }

    // ---- Monotony ----

    #[test]
    fn more_is_never_less(base in usual(), per_kg in usual(), kg in usual(), more in 1.0_f64..10.0) {
        let (size, larger) = (size(per_kg), self::size(per_kg * more));
        let seed: Mass = q(kg);
        prop_assert!(larger.count_in(seed).unwrap() >= size.count_in(seed).unwrap());
        prop_assert!(larger.thousand() <= size.thousand());
        prop_assert!(rate(base * more).needed(seed).unwrap() >= rate(base).needed(seed).unwrap());
        prop_assert!(rate(base).per_seed(larger) <= rate(base).per_seed(size));
        prop_assert!(dose(base).per_mass(larger) >= dose(base).per_mass(size));
        prop_assert!(dose(base).per_area(sown(kg * more)) >= dose(base).per_area(sown(kg)));
        prop_assert!(sown(base).mass_per_area(larger) <= sown(base).mass_per_area(size));
    }

    #[test]
    fn worse_seed_needs_more_seed(
        n in usual(), germination in some_share(), emergence in some_share(), worse in 0.01_f64..1.0,
    ) {
        let needed = |g, e| Sown::for_stand(sown(n), share(g), share(e)).unwrap();
        let good = needed(germination, emergence);
        prop_assert!(good.get() >= sown(n).get());
        prop_assert!(needed(germination * worse, emergence) >= good);
        prop_assert!(needed(germination, emergence * worse) >= good);
        let live = pure_live_seed(share(germination), share(emergence));
        prop_assert!(live <= share(germination) && live <= share(emergence));
    }

    #[test]
    fn a_tolerance_lies_around_the_size(per_kg in usual(), of in 0.0_f64..0.99) {
        let (least, most) = size(per_kg).within(share(of)).unwrap();
        prop_assert!(least <= size(per_kg) && size(per_kg) <= most);
        prop_assert!(same(least.get().to_base() + most.get().to_base(), 2.0 * per_kg));
        prop_assert!(size(per_kg).within(Share::WHOLE).is_err());
    }

    // ---- Conservation ----

    #[test]
    fn two_orders_need_what_one_of_both_needs(base in usual(), one in usual(), other in usual()) {
        let needed = |kg: f64| rate(base).needed(q(kg)).unwrap().to_base();
        prop_assert!(same(needed(one) + needed(other), needed(one + other)));
    }

    #[test]
    fn a_season_adds_up(doses in prop::collection::vec(usual(), 1..8), n in usual(), used in usual(), limit in usual()) {
        let total = total_on_seed(doses.iter().copied().map(on_seed)).unwrap();
        let parts: f64 = doses.iter().map(|of| on_seed(*of).per_area(sown(n)).get().to_base()).sum();
        let season = SeasonLimit::new(q(limit), q(used)).unwrap();
        prop_assert!((season.total(total, sown(n)).get().to_base() / (parts + used) - 1.0).abs() < 1e-14);
        prop_assert!(same(season.share(total, sown(n)), season.total(total, sown(n)).get().to_base() / limit));
        // At the most that may be sown the limit is met, not passed; a millionth more passes it.
        let most = season.max_sowing(total);
        if most.to_base() > 1e-29 && limit - used > 1e-3 * limit {
            prop_assert!(!season.exceeded(total, Sown::new(most).unwrap()));
            prop_assert!(season.exceeded(total, Sown::new(most * q::<Ratio>(1.0 + 1e-5)).unwrap()));
        }
    }

    // ---- Comparing statements ----

    #[test]
    fn statements_differ_both_ways(one in usual(), other in usual()) {
        let (there, back) = (rate(one).difference(rate(other)), rate(other).difference(rate(one)));
        prop_assert!(((1.0 + there) * (1.0 + back) - 1.0).abs() < 1e-15 * (2.0 + there.abs() + back.abs()) * 4.0);
        prop_assert_eq!(rate(one).difference(rate(one)).to_bits(), 0);
        prop_assert_eq!(rate(one).agreement(rate(one)), Agreement::Close);
        let judged = rate(one).agreement(rate(other));
        let by_size = |off: f64| match off.abs() {
            off if off <= 0.02 => Agreement::Close,
            off if off <= 0.1 => Agreement::Apart,
            _ => Agreement::FarApart,
        };
        prop_assert_eq!(judged, by_size(one / other - 1.0));
    }

    #[test]
    fn a_dose_is_above_below_or_at_a_bound(base in usual(), off in -1e-6_f64..1e-6) {
        let (bound, dose) = (rate(base), rate(base * (1.0 + off)));
        prop_assert!(!(dose.exceeds(bound) && dose.falls_below(bound)));
        if off.abs() < 0.9e-9 {
            prop_assert!(!dose.exceeds(bound) && !dose.falls_below(bound));
        } else if off.abs() > 1.1e-9 {
            prop_assert_eq!(dose.exceeds(bound), off > 0.0);
            prop_assert_eq!(dose.falls_below(bound), off < 0.0);
        }
    }

    // ---- What goes in and what comes out ----

    #[test]
    fn a_number_is_accepted_or_refused_for_its_reason(bits in any::<u64>(), ordinary in any_size(), pick in 0..4) {
        let value = match pick {
            0 => ordinary,
            1 => -ordinary,
            _ => f64::from_bits(bits),
        };
        let within = (1e-30..=1e30).contains(&value);
        prop_assert_eq!(fate(SeedSize::new(q::<SeedsPerMass>(value)).map(|size| size.get().to_base())), match value {
            v if !v.is_finite() => Err(Code::NotFinite),
            v if v <= 0.0 => Err(Code::NotPositive),
            v if within => Ok(v.to_bits()),
            _ => Err(Code::OutOfRange),
        });
        prop_assert_eq!(fate(Share::new(q::<Ratio>(value)).map(Share::number)), match value {
            v if !v.is_finite() => Err(Code::NotFinite),
            v if !(0.0..=1.0).contains(&v) => Err(Code::NotAShare),
            v if within || v == 0.0 => Ok(v.abs().to_bits()),
            _ => Err(Code::OutOfRange),
        });
        prop_assert_eq!(fate(SeasonLimit::new(q(1.0), q::<MassPerArea>(value)).map(|_| value)), match value {
            v if !v.is_finite() => Err(Code::NotFinite),
            v if v < 0.0 => Err(Code::Negative),
            v if within || v == 0.0 => Ok(v.to_bits()),
            _ => Err(Code::OutOfRange),
        });
    }

    /// The longest chains, with every number as large or small as it may be.
    #[test]
    fn nothing_accepted_becomes_nan_or_infinite(
        a in any_size(), b in any_size(), c in any_size(), d in any_size(), s in some_share(),
    ) {
        let (size, unit, n) = (size(b), UnitOfSeeds::new(q(c)).unwrap(), sown(d));
        let bushel = Bushel::new(q(c)).unwrap();
        let liquid = RatePerMass::from_bushel(q::<Volume>(a), bushel).unwrap();
        let content = Content::ByMass(share(s)).per_volume(Some(Density::new(q::<MassPerVolume>(c)).unwrap())).unwrap();
        let active: PerSeed<Active> = liquid.active(content).per_seed(size);
        let season = SeasonLimit::new(q(c), q(d)).unwrap();
        let per_unit = PerSeed::<Liquid>::from_unit(q(a), unit).unwrap();
        let results = [
            active.per_area(n).get().to_base(),
            season.total(active, n).get().to_base(),
            season.share(active, n),
            season.max_sowing(active).to_base(),
            per_unit.per_mass(size).per_bushel(bushel).to_base(),
            per_unit.per_area(n).get().to_base(),
            rate(a).implied_size(per_unit).thousand().to_base(),
            rate(a).per_seed(size).per_unit(unit).to_base(),
            rate(a).difference(per_unit.per_mass(size)),
            liquid.treats(q::<Volume>(d)).unwrap().to_base(),
            n.mass_per_area(size).to_base(),
            Sown::for_stand(n, share(s), share(s)).unwrap().mass_per_area(size).to_base(),
            Sown::by_mass(q::<MassPerArea>(a), size).unwrap().area(q::<Seeds>(c)).unwrap().to_base(),
            SeedUnit::Count(unit).units_in(q::<Mass>(a), size).unwrap(),
            RatePerArea::new(q(a)).unwrap().per_seed(n).per_mass(size).get().to_base(),
            active.per_mass(size).in_liquid(content).get().to_base(),
        ];
        for (at, result) in results.into_iter().enumerate() {
            prop_assert!(result.is_finite(), "result {at} is {result}");
        }
    }
}

/// The quantities that the properties are made of; here, so that a change of dimension is seen.
#[test]
fn rates_are_what_they_divide() {
    let rate: VolumePerMass = q::<Volume>(3.0) / q::<Mass>(2.0);
    assert_eq!(rate.to_base().to_bits(), 1.5_f64.to_bits());
    let sown: SeedsPerArea = q::<Seeds>(3.0) / q::<Area>(2.0);
    assert_eq!(sown.to_base().to_bits(), 1.5_f64.to_bits());
}

// Worked by hand: 1.02 and 1.1 of the governing statement differ by exactly the borders, whatever the last bit says.
#[test]
fn the_borders_of_agreement_belong_to_the_closer_one() {
    let judged = |of: f64| rate(of * 3.25e-6).agreement(rate(3.25e-6));
    assert_eq!([0.98, 1.02, 1.02001].map(judged), [Agreement::Close, Agreement::Close, Agreement::Apart]);
    assert_eq!([0.9, 1.1, 1.10001].map(judged), [Agreement::Apart, Agreement::Apart, Agreement::FarApart]);
}
