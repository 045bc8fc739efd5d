"""Asks a running service with the package `grpcio`, by what reflection says of it alone: an outside check of the contract.

Arguments: the address of the service. Standard input: one JSON object with `units`, a list of objects that have the `tag`
of an opening and the `unit` of a request in the JSON form of protobuf. Writes one JSON object: what was found, by tag, and
what became of a bad request. No file of ours is read: messages are made from the descriptors that the service hands out.
The first line says which versions answered.
"""

import json
import sys

import google.protobuf
import grpc
from google.protobuf import json_format
from google.protobuf.descriptor_pool import DescriptorPool
from google.protobuf.message_factory import GetMessageClass
from google.rpc import error_details_pb2
from grpc_reflection.v1alpha.proto_reflection_descriptor_database import ProtoReflectionDescriptorDatabase
from grpc_status import rpc_status

channel = grpc.insecure_channel(sys.argv[1])
database = ProtoReflectionDescriptorDatabase(channel)
pool = DescriptorPool(database)


def call(service, method, request):
    """Calls a method with a request in the JSON form of protobuf; the answer has the same form."""
    described = pool.FindServiceByName(service).FindMethodByName(method)
    ask = channel.unary_unary(
        f"/{service}/{method}",
        request_serializer=lambda message: message.SerializeToString(),
        response_deserializer=GetMessageClass(described.output_type).FromString,
    )
    message = json_format.ParseDict(request, GetMessageClass(described.input_type)())
    return json_format.MessageToDict(ask(message, timeout=60), preserving_proto_field_name=True)


def refused(service, method, request):
    """The error that a bad request comes to: its code, the one reason, the fields."""
    try:
        call(service, method, request)
    except grpc.RpcError as error:
        status = rpc_status.from_call(error)
        found = {"code": error.code().name, "infos": [], "violations": []}
        for detail in status.details:
            if detail.Is(error_details_pb2.ErrorInfo.DESCRIPTOR):
                info = error_details_pb2.ErrorInfo()
                detail.Unpack(info)
                found["infos"].append([info.reason, info.domain])
            if detail.Is(error_details_pb2.BadRequest.DESCRIPTOR):
                bad = error_details_pb2.BadRequest()
                detail.Unpack(bad)
                found["violations"] += [one.field for one in bad.field_violations]
        return found
    sys.exit(f"{method} took {request}")


UNITS = "astragal.v1.UnitService"
CATALOGS = "astragal.v1.CatalogService"
answers = {}
asked = json.load(sys.stdin)
for one in asked["units"]:
    request = {"unit": one["unit"]}
    answers[one["tag"]] = {
        "check": call(UNITS, "CheckUnit", request),
        "options": call(UNITS, "EvaluateOptions", request),
        "compact": call(UNITS, "EvaluateOptions", {**request, "view": "OPTIONS_VIEW_COMPACT"}),
        "complete": call(UNITS, "CompleteUnit", {**request, "mode": "COMPLETION_MODE_CHEAPEST", "count": 2}),
    }
bad = json.loads(json.dumps(asked["units"][0]["unit"]))
bad["picks"] = [{"attribute": "operatoin", "option": "casement"}]
found = {
    "services": sorted(database.get_services()),
    "health": call("grpc.health.v1.Health", "Check", {"service": UNITS}),
    "catalogs": call(CATALOGS, "ListCatalogs", {}),
    "catalog": call(CATALOGS, "GetCatalog", {"name": "catalogs/hinged"}),
    "answers": answers,
    "refused": refused(UNITS, "CheckUnit", {"unit": bad}),
}
print(f"grpcio {grpc.__version__}, protobuf {google.protobuf.__version__}")
print(json.dumps(found))
