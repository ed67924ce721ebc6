// Checks a signed quote with Node's own crypto: RFC 8785 bytes, RFC 7515 detached JWS, Ed25519.
import { readFileSync } from "node:fs";
import { createPublicKey, verify } from "node:crypto";

const canonical = (value) => {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value && typeof value === "object") {
    const members = Object.keys(value).sort().map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`);
    return `{${members.join(",")}}`;
  }
  return JSON.stringify(value);
};

const [quotePath, keysPath] = process.argv.slice(2);
const { signature, ...rest } = JSON.parse(readFileSync(quotePath, "utf8"));
const [head, , signed] = signature.jws.split(".");
const { alg, kid } = JSON.parse(Buffer.from(head, "base64url"));
const jwk = JSON.parse(readFileSync(keysPath, "utf8")).keys.find((key) => key.kid === kid);
const input = `${head}.${Buffer.from(canonical(rest), "utf8").toString("base64url")}`;
const key = createPublicKey({ key: jwk, format: "jwk" });
const good = alg === "Ed25519" && verify(null, Buffer.from(input), key, Buffer.from(signed, "base64url"));
console.log(good ? "good" : "bad");
