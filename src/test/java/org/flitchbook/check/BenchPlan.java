package org.flitchbook.check;

/** The plan of a {@link Bench}, with room for what a test asks for. */
final class BenchPlan {

  static final String TEXT =
      """
      {
        "flitchbook": 1,
        "establishment": {
          "name": "Wrenfold Smokeyard", "number": "W-207", "address": "3 Drove Lane, Harrow Fen",
          "regime": "inspected by the state", "zone": "America/New_York", "altitude": "310 ft",
          "paper": "Letter", "temperature": "TEMPERATURE"
        },
        "plan": {"version": "1", "signed": "2026-01-05", "signedBy": "MA", "reassessBy": "2027-01-05"},
        "ruleSets": ["us", "us-retail"],
        "people": [{"initials": "MA", "name": "Maud Achterberg", "roles": ["maker"]}],
        "instruments": [
          {"id": "S-10", "kind": "scale", "readability": "1 g", "checkEvery": "400 d", "tolerance": "2 g"},
          {"id": "S-001", "kind": "scale", "readability": "0.01 g", "checkEvery": "400 d", "tolerance": "0.02 g"},
          {"id": "S-LB", "kind": "scale", "readability": ["5 g", "0.01 lb"], "checkEvery": "400 d", "tolerance": "5 g"},
          {"id": "S-R", "kind": "scale", "readability": "1 g", "repeatability": "0 g", "checkEvery": "400 d", "tolerance": "2 g"},
          {"id": "HT-0", "kind": "thermometer", "accuracy": "0 °F", "checkEvery": "400 d", "tolerance": "2 °F"},
          {"id": "HT-1", "kind": "thermometer", "accuracy": "1 °F", "checkEvery": "30 d", "tolerance": "2 °F"},
          {"id": "LG-0", "kind": "logger", "accuracy": "0 °F", "checkEvery": "400 d", "tolerance": "1 °F"},
          {"id": "LG-A", "kind": "logger", "accuracy": "0.5 °F", "checkEvery": "400 d", "tolerance": "1 °F"},
          {"id": "LG-H", "kind": "logger", "accuracy": "0 °F", "humidityAccuracy": "2 %", "checkEvery": "400 d", "tolerance": "1 °F"}
        ],
        "places": [
          {"id": "F1", "name": "curing fridge", "kind": "cooler"},
          {"id": "SK", "name": "sink", "kind": "water"},
          {"id": "F2", "name": "fan fridge", "kind": "cooler"},
          {"id": "SM", "name": "smoker", "kind": "smoker"}
        ],
        "ingredients": [
          {"lot": "C1", "name": "Cure No. 1", "sodiumNitrite": "6.25 %", "sodiumNitrate": "0 %"},
          {"lot": "C2", "name": "Cure No. 2", "sodiumNitrite": "6.25 %", "sodiumNitrate": "4 %"},
          {"lot": "CK", "name": "potassium cure", "potassiumNitrite": "10 %", "potassiumNitrate": "0 %", "support": "label"},
          {"lot": "CX", "name": "cure of unknown strength"},
          {"lot": "CM", "name": "cure of both salts", "sodiumNitrite": "5 %", "potassiumNitrite": "5 %", "support": "label"},
          {"lot": "CR", "name": "ready mix", "sodiumNitrite": "0.6 %", "sodiumNitrate": "0 %"},
          {"lot": "CE", "name": "cure with erythorbate", "sodiumNitrite": "6.25 %", "sodiumErythorbate": "2.5 %", "sodiumAscorbate": "2.5 %"},
          {"lot": "CP", "name": "pure nitrite", "sodiumNitrite": "100 %", "sodiumNitrate": "0 %", "support": "label"},
          {"lot": "E", "name": "sodium erythorbate", "sodiumErythorbate": "100 %"},
          {"lot": "EM", "name": "its monohydrate", "sodiumErythorbateMonohydrate": "100 %"}
        ],
        "products": [
          {"code": "P", "name": "cured pork", FACTS
           "limits": [LIMITS],
           "ownLimits": [OWN]}
        ]
      }
      """;

  private BenchPlan() {}
}
