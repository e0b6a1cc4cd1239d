import { formatKhz, formatPosition, hz } from "@skipwright/units";
import type { DscArea, DscCall, DscDistress, DscFrequency, DscMessage } from "./call.ts";

/** A call as one sentence of a log; what could not be read is named as such. `called` names the station called where `to` does not. */
export function summaryOf(call: DscCall | null, ok: boolean, called: string = NOT_READ): string {
	if (call === null) return "Selective call whose kind could not be read.";
	const sentence = `${sentenceOf(call, called)}.`;
	return ok ? sentence : `Not sure, received with errors: ${sentence}`;
}

const NOT_READ = "a station whose identity could not be read";

function sentenceOf(call: DscCall, called: string): string {
	if (call.format === "national use") return "Selective call for national use, not decoded";
	if (call.format === "distress alert" && call.telecommand1 === null) {
		return `Distress alert from ${station(call.from)}: ${distressWords(call.distress)}`;
	}
	if (call.format.startsWith("code ")) return `Selective call of an unknown format (${call.format}), not decoded`;
	if (call.distress !== null) return distressTraffic(call, call.distress, called);
	return workingCall(call, called);
}

function distressTraffic(call: DscCall, distress: DscDistress, called: string): string {
	const [from, words] = [capital(station(call.from)), distressWords(distress)];
	if (call.telecommand1 === "distress acknowledgement") {
		if (call.from !== null && call.from === distress.ship) return `${from} withdraws its own distress alert (${words})`;
		const towards = call.format === "all ships" ? "" : ` to ${addressee(call, called)}`;
		return `${from} acknowledges${towards} the distress alert of ${shipInDistress(distress)}: ${words}`;
	}
	if (call.end === "acknowledgement given") {
		return `${from} acknowledges the distress relay of ${addressee(call, called)} for ${shipInDistress(distress)}: ${words}`;
	}
	const asked = call.end === "acknowledgement asked" ? "; asks to acknowledge" : "";
	return `${from} relays to ${addressee(call, called)} the distress of ${shipInDistress(distress)}: ${words}${asked}`;
}

function shipInDistress({ ship }: DscDistress): string {
	return ship === null ? "a ship whose identity is not told" : station(ship);
}

function distressWords(distress: DscDistress | null): string {
	if (distress === null) return "nothing of it could be read";
	const where = distress.position === null ? "position not told" : `at ${formatPosition(distress.position)}`;
	const when = distress.time === null ? "time not told" : `${distress.time} UTC`;
	const then = distress.followOn === null || distress.followOn === "no information" ? "" : `; ${distress.followOn} to follow`;
	return `${distress.nature ?? "nature not read"}, ${where}, ${when}${then}`;
}

function workingCall(call: DscCall, called: string): string {
	const [from, to] = [capital(station(call.from)), addressee(call, called)];
	const isAnswer = call.end === "acknowledgement given";
	const what = asking(call, isAnswer);
	const kind = `${call.category ?? "category not read"}${call.format === "individual, automatic service" ? ", automatic service" : ""}`;
	const asked = call.end === "acknowledgement asked" ? "; asks to acknowledge" : "";
	return `${from} ${isAnswer ? "answers" : "calls"} ${to} (${kind}): ${what}${asked}`;
}

function asking({ telecommand1, telecommand2, message }: DscCall, isAnswer: boolean): string {
	const second = telecommand2 === null || telecommand2 === "no information" ? "" : `, ${secondWords(telecommand2)}`;
	return firstWords(telecommand1, isAnswer) + second + messageWords(message);
}

function firstWords(telecommand: DscCall["telecommand1"], isAnswer: boolean): string {
	switch (telecommand) {
		case null:
			return "what it asks could not be read";
		case "test":
			return isAnswer ? "test received" : "test call";
		case "position":
			return isAnswer ? "its position" : "asks for the position";
		case "polling":
			return isAnswer ? "is there" : "asks whether it is there";
		case "no information":
			return "no purpose told";
		default:
			return telecommand;
	}
}

function secondWords(telecommand: string): string {
	return telecommand.startsWith("code 12") ? "automatic connection system (from a newer edition, not decoded)" : telecommand;
}

function messageWords(message: DscMessage | null): string {
	if (message === null) return "";
	if (message.kind === "position") {
		const where = message.position === null ? "position not told" : `at ${formatPosition(message.position)}`;
		return message.time === null ? `, ${where}` : `, ${where}, ${message.time} UTC`;
	}
	const { receive, transmit } = message;
	if (receive === null && transmit === null) return "";
	const [receiveWords, transmitWords] = [receive, transmit].map(frequencyWords);
	if (receiveWords === transmitWords) return `, both ways on ${receiveWords}`;
	const parts = [receive === null ? [] : [`receive on ${receiveWords}`], transmit === null ? [] : [`transmit on ${transmitWords}`]];
	return `, the called station to ${parts.flat().join(" and ")}`;
}

function frequencyWords(frequency: DscFrequency | null): string {
	if (frequency === null) return "";
	if ("hz" in frequency) return `${formatKhz(hz(frequency.hz))} kHz`;
	return "hfChannel" in frequency ? `HF channel ${frequency.hfChannel}` : `VHF channel ${frequency.vhfChannel}`;
}

function addressee(call: DscCall, called: string): string {
	if (call.format === "all ships") return "all ships";
	if (call.format === "area") return call.area === null ? "ships in an area" : areaWords(call.area);
	if (call.format === "group") return call.to === null ? "a group" : `group ${call.to}`;
	return call.to === null ? called : station(call.to);
}

function areaWords({ northDeg, westDeg, heightDeg, widthDeg }: DscArea): string {
	const lat = `${Math.abs(northDeg)}°${northDeg < 0 ? "S" : "N"}`;
	const lon = `${Math.abs(westDeg)}°${westDeg < 0 ? "W" : "E"}`;
	return `ships in the area ${heightDeg}° south and ${widthDeg}° east of ${lat} ${lon}`;
}

/** By the form of the identity (ITU-R M.585). */
function station(identity: string | null): string {
	if (identity === null) return NOT_READ;
	if (/^00[2-7]/.test(identity)) return `coast station ${identity}`;
	if (/^0[2-7]/.test(identity)) return `group ${identity}`;
	return /^[2-7]/.test(identity) ? `ship ${identity}` : `station ${identity}`;
}

function capital(words: string): string {
	return words.charAt(0).toUpperCase() + words.slice(1);
}
